using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>The work itself: stages with their steps, clocks, rates.</summary>
internal static class WorkTables
{
    // How many sets of rates stand beside each other on a page.
    private const int SetsAcross = 3;

    // The service first, then each repair under a heading of its own.
    public static Html Stages(JobStory story) => Html.All(story.Stages.GroupBy(s => s.Repair).Select(repair => Html.Of($"""
        <h2>{(repair.Key.Length > 0 ? repair.Key : "What was done")}</h2>
        {repair.Select(Stage)}
        """)));

    private static Html Stage(StageStory stage) => Html.Of($"""
        <h3>{stage.Title}</h3>
        <table><thead><tr><th>Step</th><th class="who">Who, when</th></tr></thead><tbody>
        {stage.Steps.SelectMany(s => s.Earlier.Append(s)).Select(Step)}</tbody></table>

        """);

    private static Html Step(StepLine step) => Html.Of($"""
        <tr><td>{step.Do}{Html.If(step.Occurrence > 1, () => Html.Of($" (time {step.Occurrence})"))}{Html.If(step.Answers.Count > 0, () => Html.Of($"""<ul class="answers">{Html.Between(" ", step.Answers.Select(Answer))}</ul>"""))}</td><td class="when">{End(step.End)}</td></tr>

        """);

    private static Html End(StepEnd? end) => end switch
    {
        null => Html.Of($"""<span class="mark">begun, not done</span>"""),
        { Done: false } e => Html.Of($"""{e.By}, {HtmlReport.Day(e.At.Wall)} <span class="mark">passed over</span>"""),
        { Remembered: { } when } e => Html.Of($"""{e.By}, {HtmlReport.Day(when)} as remembered <span class="mark">entered afterwards</span> {HtmlReport.Day(e.At.Wall)}"""),
        var e => Html.Of($"{e.By}, {HtmlReport.Day(e.At.Wall)}"),
    };

    private static Html Answer(AnswerLine a) => a.Kind switch
    {
        AnswerKind.Confirmed => Html.Of($"""<li><span class="asked">{a.Asked}</span> {a.Answer}</li>"""),
        AnswerKind.Left => Html.Of($"""<li><span class="mark">left open</span> {a.Asked}</li>"""),
        _ => Html.Of($"""<li><span class="asked">{a.Asked}:</span> {a.Answer.TrimEnd()}{a.Limits}{a.With}{Html.If(a.Outside, () => Html.Of($""" <span class="mark">outside its limits</span>"""))}</li>"""),
    };

    public static Html Soaks(JobStory story)
    {
        if (story.Soaks.Count == 0) return default;
        return Html.Of($"""
            <h2>Baths and waits</h2>
            <table><thead><tr><th>In what</th><th class="mid">Took</th><th class="planned">Planned</th><th class="mid">Parts</th><th class="who">Who, begun</th></tr></thead><tbody>
            {story.Soaks.Select(Soak)}</tbody></table>
            {story.Baskets.Select(b => Html.Of($"""<p class="load"><b>{b.Name[..1].ToUpperInvariant()}{b.Name[1..]}:</b> {string.Join("; ", b.Parts)}.</p>"""))}

            """);
    }

    private static Html Soak(SoakLine s) => Html.Of($"""
        <tr><td>{s.Name}</td><td>{(s.Ran is { } ran ? Times.Clock(ran) : "still counting")}{Html.If(!s.Certain, () => Html.Of($" by the wall clock, across a restart"))}{Against(s)}</td><td>{Times.Window(s.Planned)}</td><td>{s.Inside}</td><td class="when">{s.By}, {HtmlReport.Day(s.At)}</td></tr>

        """);

    private static Html Against(SoakLine s) => s.Standing switch
    {
        Standing.Under => Html.Of($""" <span class="mark">under its least</span>"""),
        Standing.Over => Html.Of($""" <span class="mark">past its longest</span>"""),
        _ => default,
    };

    public static Html Rates(JobStory story) => Html.If(story.Rates.Count > 0, () => Html.Of($"""
        <h2>Rates</h2>
        {story.Rates.SelectMany(Rates)}
        """));

    private static IEnumerable<Html> Rates(RateLines lines)
    {
        List<string> positions = [.. lines.Rates.Select(r => r.Position).Distinct()];
        foreach (decimal?[] hours in lines.Rates.Select(r => r.AfterHours).Distinct().Chunk(SetsAcross))
            yield return Html.Of($"""
                <h3>{lines.Step}</h3>
                <table><thead>{Html.If(hours is not [null], () => Html.Of($"""<tr><th></th>{hours.Select(h => Html.Of($"""<th class="group" colspan="3">{After(h)}</th>"""))}</tr>"""))}
                <tr><th class="wide">Position</th>{hours.Select(_ => Html.Of($"""<th class="number group">rate, s/d</th><th class="number">swing, °</th><th class="number">beat error, ms</th>"""))}</tr></thead><tbody>
                {positions.Select(p => Html.Of($"<tr><td>{AskWords.Spoken(p)}</td>{hours.Select(h => Cells(lines.Rates.LastOrDefault(r => r.Position == p && r.AfterHours == h)))}</tr>"))}</tbody></table>

                """);
    }

    private static string After(decimal? hours) => hours is { } h ? string.Create(CultureInfo.InvariantCulture, $"{h} h after winding") : "time not stated";

    private static Html Cells(JobEvent.RateTaken? r) => Html.Of($"""<td class="number group">{r?.Rate.ToString() ?? ""}</td><td class="number">{r?.Amplitude?.ToString() ?? ""}</td><td class="number">{r?.BeatError?.ToString() ?? ""}</td>""");
}
