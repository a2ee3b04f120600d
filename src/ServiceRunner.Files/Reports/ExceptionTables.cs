using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>What a reviewer looks at first, besides findings: deviations, parts that are not where they came from, what is owed.</summary>
internal static class ExceptionTables
{
    public static Html Deviations(JobStory story) => Table("Deviations", story.Deviations.Count, "",
        Html.Of($"""<th class="mid">What</th><th>At the step</th><th>In detail</th><th>Reason</th><th class="who">Who, when</th>"""),
        story.Deviations.Select(d => Html.Of($"""<tr><td><b>{d.Kind}</b></td><td>{d.Step}</td><td>{d.Detail}</td><td>{(d.Reason.Length > 0 ? d.Reason : "none given")}</td><td class="when">{d.By}, {HtmlReport.Day(d.At)}</td></tr>""")));

    public static Html Parts(JobStory story) => Table("Parts", story.Parts.Count, "",
        Html.Of($"""<th class="wide">What</th><th>Which</th><th class="who">Who, when</th>"""),
        story.Parts.Select(p => Html.Of($"""<tr><td>{p.What}</td><td>{p.Which}</td><td class="when">{p.Who}</td></tr>""")));

    public static Html Marks(JobStory story) => Table("Marked moments", story.Marks.Count, "",
        Html.Of($"""<th>At the step</th><th class="who">Who, when</th>"""),
        story.Marks.Select(m => Html.Of($"""<tr><td>{m.Step}</td><td class="when">{m.By}, {HtmlReport.Day(m.At)}</td></tr>""")));

    public static Html Owed(JobStory story) => Table("Owed", story.OwedEach.Count(), "",
        Html.Of($"""<th class="wide">What</th><th>Which</th>"""),
        story.OwedEach.Select(o => Html.Of($"<tr><td>{o.Kind}</td><td>{o.Name}</td></tr>")));

    internal static Html Table(string title, int count, string ifNone, Html columns, IEnumerable<Html> rows)
    {
        if (count == 0 && ifNone.Length == 0) return default;
        return Html.Of($"""
            <h2>{title}</h2>
            {(count == 0 ? Html.Of($"<p>{ifNone}</p>") : Html.Of($"<table><thead><tr>{columns}</tr></thead><tbody>{rows}</tbody></table>"))}

            """);
    }
}
