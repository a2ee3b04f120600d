using ServiceRunner.Core.Procedures;

namespace ServiceRunner.Files.Reports;

/// <summary>
/// The map of a movement with its oiling points, as a drawing in the page: each side as one looks at it. What became of a
/// point is told by its shape and filling, never by colour.
/// </summary>
internal static class OilMap
{
    // The smaller side of the movement in the drawing's own units; a point's mark and number in the same.
    private const double Size = 400, Mark = 13, Margin = 6;

    public static Html Of(MapStory map) => Html.Of($"""
        <div class="maps">{Side(map, false, "Train side")}{Side(map, true, "Dial side")}</div>

        """);

    /// <summary>What the marks mean.</summary>
    public static Html Legend(IEnumerable<PointState> states) => Html.Of($"""
        <p class="legend">{states.Distinct().Order().Select(s => Html.Of($"""<span><svg xmlns="http://www.w3.org/2000/svg" viewBox="-18 -18 36 36" width="18" height="18">{Shape(s, 0, 0, "")}</svg> {Words(s)}</span> """))}</p>

        """);

    public static string Words(PointState state) => state switch
    {
        PointState.Served => "served",
        PointState.NotServed => "not served",
        PointState.NotAsked => "not part of this job",
        _ => "stays dry",
    };

    private static Html Side(MapStory map, bool dial, string title)
    {
        double scale = Size / (double)Math.Min(map.Map.Size.Width, map.Map.Size.Height);
        double width = (double)map.Map.Size.Width * scale, height = (double)map.Map.Size.Height * scale;
        List<(PointLine Line, double X, double Y)> points = [.. map.Map.Points.Where(p => p.On!.DialSide == dial && map.Points.ContainsKey(p.Id))
            .Select(p => (map.Points[p.Id], (double)p.On!.X * scale, (double)p.On.Y * scale))];
        if (points.Count == 0) return default;
        return Html.Of($"""
            <figure><svg xmlns="http://www.w3.org/2000/svg" viewBox="{-Margin} {-Margin} {width + 2 * Margin} {height + 2 * Margin}" role="img" aria-label="{title}">
            {Outline(map.Map.Size, width, height)}{Apart(points).Select(p => Leader(p.At, p.Home))}{points.Zip(Apart(points), (p, at) => Shape(p.Line.State, at.At.X, at.At.Y, $"{p.Line.Number}"))}
            </svg><figcaption>{title}</figcaption></figure>
            """);
    }

    private static Html Outline(MapSize size, double width, double height) => size.Width == size.Height
        ? Html.Of($"""<circle cx="{width / 2}" cy="{height / 2}" r="{width / 2}" fill="none" stroke="#555" stroke-width="1.5"/>""")
        : Html.Of($"""<rect x="0" y="0" width="{width}" height="{height}" rx="24" fill="none" stroke="#555" stroke-width="1.5"/>""");

    private static Html Leader((double X, double Y) at, (double X, double Y) home) => Html.If(Distance(at, home) > Mark / 2, () =>
        Html.Of($"""<line x1="{home.X}" y1="{home.Y}" x2="{at.X}" y2="{at.Y}" stroke="#000" stroke-width="1"/><circle cx="{home.X}" cy="{home.Y}" r="2.5" fill="#000"/>"""));

    private static Html Shape(PointState state, double x, double y, string number)
    {
        Html label = Html.Of($"""<text x="{x}" y="{y + 5}" font-family="sans-serif" font-size="14" font-weight="bold" text-anchor="middle" fill="{(state == PointState.Served ? "#fff" : "#000")}">{number}</text>""");
        return state switch
        {
            PointState.Served => Html.Of($"""<circle cx="{x}" cy="{y}" r="{Mark}" fill="#000"/>{label}"""),
            PointState.NotServed => Html.Of($"""<circle cx="{x}" cy="{y}" r="{Mark - 1}" fill="#fff" stroke="#000" stroke-width="2"/>{label}"""),
            PointState.NotAsked => Html.Of($"""<circle cx="{x}" cy="{y}" r="{Mark - 1}" fill="#fff" stroke="#000" stroke-width="1.3" stroke-dasharray="3 3"/>{label}"""),
            _ when number.Length == 0 => Cross(x, y),
            _ => Html.Of($"""{Cross(x, y)}<text x="{x + 11}" y="{y + 5}" font-family="sans-serif" font-size="14" font-weight="bold" fill="#000">{number}</text>"""),
        };
    }

    private static Html Cross(double x, double y) =>
        Html.Of($"""<path d="M {x - 8} {y - 8} L {x + 8} {y + 8} M {x - 8} {y + 8} L {x + 8} {y - 8}" stroke="#000" stroke-width="3" fill="none"/>""");

    // Marks that would lie on each other are pushed apart; a line then leads to the place itself.
    private static IReadOnlyList<((double X, double Y) At, (double X, double Y) Home)> Apart(IReadOnlyList<(PointLine Line, double X, double Y)> points)
    {
        (double X, double Y)[] at = [.. points.Select(p => (p.X, p.Y))];
        for (int round = 0; round < 60; round++)
            for (int i = 0; i < at.Length; i++)
                for (int j = i + 1; j < at.Length; j++)
                {
                    double distance = Distance(at[i], at[j]), missing = 2 * Mark + 2 - distance;
                    if (missing <= 0) continue;
                    double angle = distance > 0.01 ? Math.Atan2(at[j].Y - at[i].Y, at[j].X - at[i].X) : i + j;
                    (double x, double y) = (Math.Cos(angle) * missing / 2, Math.Sin(angle) * missing / 2);
                    (at[i], at[j]) = ((at[i].X - x, at[i].Y - y), (at[j].X + x, at[j].Y + y));
                }
        return [.. points.Select((p, i) => (at[i], (p.X, p.Y)))];
    }

    private static double Distance((double X, double Y) a, (double X, double Y) b) => Math.Sqrt((a.X - b.X) * (a.X - b.X) + (a.Y - b.Y) * (a.Y - b.Y));
}
