using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>The sheets of one or more jobs as one page that needs nothing beside it, a sheet to each printed page.</summary>
/// <param name="Jobs">The jobs with their sheets.</param>
public sealed record HtmlSheets(IReadOnlyList<JobSheets> Jobs)
{
    /// <summary>Writes them.</summary>
    public override string ToString() => HtmlPage.Of(
        Jobs is [var first, ..] ? $"{first.Workshop}: job {first.Job.Number}" : "", ReportStyle.Sheet, Jobs.SelectMany(j => j.Sheets.Select(s => Article(j, s))));

    private static Html Article(JobSheets of, MakingSheet sheet) => Html.Of($"""
        <article>
        <header>
        <p class="workshop">{of.Workshop}</p>
        <h1>{sheet.Title}</h1>
        </header>
        {Html.If(of.ReadOnlyUpTo.Length > 0, () => Html.Of($"""<p class="notice"><b>This sheet is not of the whole job.</b> {of.ReadOnlyUpTo}</p>"""))}
        <dl>
        <dt>Job</dt><dd><b>{of.Job.Number}</b></dd>
        <dt>For</dt><dd>{of.Job.What}</dd>
        <dt>By</dt><dd>{sheet.Procedure.Title}, revision {sheet.Procedure.Revision}</dd>
        {Html.If(sheet.Part.Length > 0, () => Html.Of($"<dt>Old part</dt><dd>{sheet.Part}: {SheetWords.Old(sheet)}</dd>"))}
        </dl>
        <table><thead><tr><th class="wide">Line</th><th class="number mid">Size</th><th>Came from</th><th class="who">Who, when</th></tr></thead><tbody>
        {sheet.Lines.Select(Line)}</tbody></table>
        <p>{SheetWords.State(sheet)}</p>
        </article>

        """);

    private static Html Line(MakingLine line) => Html.Of($"""
        <tr><td>{line.Name}</td><td class="number">{(line.Size is null ? Html.Of($"""<span class="mark">{SheetWords.Size(line)}</span>""") : Html.Of($"<b>{SheetWords.Size(line)}</b>"))}</td><td>{SheetWords.Came(line)}</td><td class="when">{string.Join("; ", Measured(line).Distinct())}</td></tr>

        """);

    private static IEnumerable<string> Measured(MakingLine line) =>
        new[] { line.From.Measured, line.Less?.Measured }.OfType<MeasuredFigure>().Select(m => $"{m.By}, {HtmlReport.Day(m.At.Wall)}");
}
