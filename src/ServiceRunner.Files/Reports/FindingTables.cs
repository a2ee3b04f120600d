using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>Findings with what became of them and their pictures, and what the owner was told and answered.</summary>
internal static class FindingTables
{
    public static Html Findings(JobStory story, EmbeddedPictures pictures) => ExceptionTables.Table("Findings", story.Findings.Count, "Nothing was found to be wrong or unusual.",
        Html.Of($"""<th class="wide">Where</th><th>What, and what became of it</th><th class="mid">Weight, how sure</th><th class="who">Who, when</th>"""),
        story.Findings.Select(f => Html.Of($"""<tr class="long"><td>{f.Place}</td><td>{f.What}{Fate(f)}{pictures.Of(f.Pictures)}</td><td>{JobWords.Of(f.Weight)}, {JobWords.Of(f.Sure)}</td><td class="when">{f.By}, {HtmlReport.Day(f.At)}</td></tr>""")));

    public static Html OwnersWord(JobStory story) => ExceptionTables.Table("Estimates and the owner's answers", story.OwnersWord.Count, "",
        Html.Of($"""<th class="mid">Day</th><th class="wide">What</th><th>In detail</th><th class="short">Who</th>"""),
        story.OwnersWord.Select(o => Html.Of($"""<tr><td>{o.On}</td><td>{o.What}</td><td><ul class="fate">{o.Lines.Select(l => Html.Of($"<li>{l}</li>"))}</ul></td><td>{o.By}</td></tr>""")));

    public static Html Pictures(JobStory story, EmbeddedPictures pictures) => Html.If(story.Pictures.Count > 0, () => Html.Of($"""
        <h2>Pictures</h2>
        {pictures.Of(story.Pictures)}

        """));

    private static Html Fate(FindingLine finding) => Html.If(finding.Fate.Count > 0, () => Html.Of($"""<ul class="fate">{finding.Fate.Select(s => Html.Of($"<li>{s}</li>"))}</ul>"""));
}
