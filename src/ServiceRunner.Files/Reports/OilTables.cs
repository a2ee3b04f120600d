
namespace ServiceRunner.Files.Reports;

/// <summary>Which point got what from which bottle: the map, by point, by bottle.</summary>
internal static class OilTables
{
    public static Html Of(JobStory story) => Html.If(story.Points.Count > 0, () => Html.Of($"""
        <h2>Lubrication</h2>
        {Maps(story)}<h3>By point</h3>
        <table><thead><tr><th class="short">No.</th><th>Point</th><th class="mid">Wants</th><th class="wide">Got</th><th class="who">Who, when</th></tr></thead><tbody>
        {story.Points.Select(Point)}</tbody></table>
        {Bottles(story)}
        """));

    private static Html Maps(JobStory story)
    {
        if (story.Maps.Count == 0) return default;
        HashSet<string> drawn = [.. story.Maps.SelectMany(m => m.Points.Keys)];
        return Html.Of($"{story.Maps.Select(m => Html.Of($"{Html.If(story.Maps.Count > 1, () => Html.Of($"<h3>{m.Map.Title}</h3>"))}{OilMap.Of(m)}"))}{OilMap.Legend(story.Points.Where(p => drawn.Contains(p.Id)).Select(p => p.State))}");
    }

    private static Html Point(PointLine p) => p.State switch
    {
        PointState.Served => Html.Of($"""
            <tr><td>{p.Number}</td><td>{p.Name}</td><td>{p.Role}</td><td>{p.Lubricant}, {(p.Batch.Length > 0 ? $"bottle {p.Batch}" : "bottle not stated")}</td><td class="when">{p.By}, {HtmlReport.Day(p.At!.Value)}</td></tr>

            """),
        PointState.NotServed => Html.Of($"""
            <tr><td>{p.Number}</td><td>{p.Name}</td><td>{p.Role}</td><td><span class="mark">{OilMap.Words(p.State)}</span></td><td></td></tr>

            """),
        _ => Html.Of($"""
            <tr><td>{p.Number}</td><td>{p.Name}</td><td>{p.Role}</td><td class="quiet">{(p.State == PointState.StaysDry ? "nothing" : OilMap.Words(p.State))}</td><td></td></tr>

            """),
    };

    private static Html Bottles(JobStory story)
    {
        List<IGrouping<(string Lubricant, string Batch), PointLine>> bottles = [.. story.Points.Where(p => p.State == PointState.Served).GroupBy(p => (p.Lubricant, p.Batch)).OrderBy(g => g.Key.Lubricant, StringComparer.Ordinal).ThenBy(g => g.Key.Batch, StringComparer.Ordinal)];
        return Html.If(bottles.Count > 0, () => Html.Of($"""
            <h3>By bottle</h3>
            <table><thead><tr><th class="wide">Lubricant</th><th class="mid">Bottle</th><th>Points</th></tr></thead><tbody>
            {bottles.Select(b => Html.Of($"<tr><td>{b.Key.Lubricant}</td><td>{(b.Key.Batch.Length > 0 ? b.Key.Batch : "not stated")}</td><td>{Html.Between("; ", b.Select(p => Html.Of($"{p.Number} {p.Name}")))}</td></tr>"))}</tbody></table>

            """));
    }
}
