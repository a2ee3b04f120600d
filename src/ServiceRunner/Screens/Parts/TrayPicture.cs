using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Screens.Parts;

/// <summary>A cell of the picture: a part in its compartment, or the empty compartment of one that is elsewhere (no part).</summary>
/// <param name="Part">The part's id; empty if it cannot be marked here.</param>
/// <param name="Text">The compartment's number and the sign, or the sign and the name.</param>
/// <param name="X">Column within the picture.</param>
/// <param name="Standing">Where the part stands.</param>
internal sealed record TrayCell(string Part, string Text, int X, PartStanding Standing)
{
    /// <summary>More about it, fainter; only where it has a row of its own.</summary>
    public string Detail { get; init; } = "";
}

/// <summary>A row of the picture: a heading, or cells behind a label.</summary>
internal sealed record TrayRow(string Label, IReadOnlyList<TrayCell> Cells);

/// <summary>
/// The tray as rows of compartments. A repair's tray stands apart; parts without a compartment, and those that are set
/// aside, sent out or lost, are listed below it by name.
/// </summary>
internal static class TrayPicture
{
    private const int LabelWidth = 5;

    /// <summary>The sign of a standing: all differ without colour.</summary>
    public static string Sign(PartStanding standing) => standing switch
    {
        PartStanding.NotYetOff => "·",
        PartStanding.There => "●",
        PartStanding.InBasket => "b",
        PartStanding.Wet => "w",
        PartStanding.InRepair => "r",
        PartStanding.TriedDry => "t",
        PartStanding.Fitted => "+",
        PartStanding.Lost => "?",
        _ => "–",
    };

    /// <summary>The rows as they fit a width.</summary>
    public static IReadOnlyList<TrayRow> Of(Job job, Plan plan, int width)
    {
        List<(string Part, PartStanding Standing, Compartment? Home)> parts =
            [.. plan.Parts.Select(p => p.Id.Value).Union(job.Parts.Keys.Order(StringComparer.Ordinal)).Select(p => (p, job.StandingOf(plan, p), Compartment.Home(job, plan, p)))];
        List<TrayRow> rows = [];
        foreach (var tray in parts.Where(p => p.Home is not null).OrderBy(p => p.Home!.Value, Compartment.InOrder).GroupBy(p => p.Home!.Value.Tray))
        {
            if (tray.Key.Length > 0) rows.Add(new TrayRow($"Tray {tray.Key}: {plan.TitleOf(tray.Key)}", []));
            foreach (var row in tray.GroupBy(p => p.Home!.Value is { Number: not null } numbered ? numbered.Row : null)) rows.AddRange(Row(row.Key ?? "", [.. row], width));
        }
        rows.AddRange(List("Without a compartment", parts.Where(p => p.Home is null && !IsAway(p.Standing)), job, plan));
        foreach (PartStanding away in new[] { PartStanding.SetAside, PartStanding.SentOut, PartStanding.Lost, PartStanding.Replaced })
            rows.AddRange(List(PartWords.Of(away) is var words ? char.ToUpperInvariant(words[0]) + words[1..] : "", parts.Where(p => p.Standing == away), job, plan));
        return rows;
    }

    private static bool IsAway(PartStanding standing) => standing is PartStanding.SetAside or PartStanding.SentOut or PartStanding.Lost or PartStanding.Replaced;

    private static IEnumerable<TrayRow> Row(string label, List<(string Part, PartStanding Standing, Compartment? Home)> parts, int width)
    {
        List<TrayCell> cells = [];
        int x = LabelWidth;
        foreach ((string part, PartStanding standing, Compartment? home) in parts)
        {
            string place = home!.Value.Number is { } number ? number.ToString(CultureInfo.InvariantCulture).PadLeft(2) : $"{home.Value.Row} ";
            string text = $"{place}{Sign(standing)}";
            if (cells.Count > 0 && x + Sheet.Columns(text) + 2 > width)
            {
                yield return new TrayRow(label, cells);
                (label, cells, x) = ("", [], LabelWidth);
            }
            cells.Add(new TrayCell(IsAway(standing) ? "" : part, text, x, standing));
            x += Sheet.Columns(text) + 1;
        }
        yield return new TrayRow(label, cells);
    }

    private static IEnumerable<TrayRow> List(string title, IEnumerable<(string Part, PartStanding Standing, Compartment? Home)> parts, Job job, Plan plan)
    {
        List<TrayRow> rows = [.. parts.Select(p => new TrayRow("", [new TrayCell(p.Part, $"{Sign(p.Standing)} {plan.NameOf(p.Part)}", LabelWidth, p.Standing)
        {
            Detail = p.Standing is PartStanding.NotYetOff or PartStanding.There or PartStanding.Fitted ? "" : IsAway(p.Standing) ? Why(job.PlaceOf(p.Part)) : PartWords.Of(p.Standing),
        }]))];
        return rows.Count == 0 ? [] : [new TrayRow(title, []), .. rows];
    }

    private static string Why(PartPlace place) => place switch
    {
        PartPlace.SetAside x => x.Why,
        PartPlace.SentOut { To.Length: > 0 } x => $"to {x.To}",
        PartPlace.Replaced { By.Length: > 0 } x => $"by {x.By}",
        _ => "",
    };
}
