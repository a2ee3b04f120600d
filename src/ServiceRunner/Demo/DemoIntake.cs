using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Data;

namespace ServiceRunner.Demo;

/// <summary>What came in over the invented counter. Nobody of these names can be reached at these numbers.</summary>
/// <param name="Number">The job's number.</param>
/// <param name="What">What it is.</param>
/// <param name="Owner">Whose it is.</param>
/// <param name="Complaint">What the owner says.</param>
/// <param name="Serial">As engraved.</param>
/// <param name="CameWith">What came with it.</param>
/// <param name="Condition">How it arrived.</param>
/// <param name="PromisedIn">Days from the present; null for no promise.</param>
/// <param name="Limit">What was agreed at most; null if nothing was.</param>
internal sealed record DemoIntake(string Number, string What, Owner Owner, string Complaint, string Serial, string CameWith, string Condition, int? PromisedIn, decimal? Limit)
{
    public static readonly DemoIntake Finished = new("Q26-101", "Wrist watch, silvered dial, steel case", Person("M. Halvorsen", "555 0101", "halvorsen", "3 Invented Row"),
        "loses five minutes a day since the summer", "204 417", "leather strap", "glass scratched, crown worn smooth, goes", -3, 380);

    public static readonly DemoIntake WaitingForAPart = new("Q26-104", "Wrist watch, black dial, gold-filled case", Person("R. Osei", "555 0104", "osei", "11 Nowhere Street"),
        "stopped after a fall onto tiles", "88 103", "strap without its buckle", "dent at 8, glass whole, does not go", -2, 420);

    public static readonly DemoIntake ReadyToOil = new("Q26-107", "Wrist watch, cream dial, small case", Person("P. Lindqvist", "555 0107", "lindqvist", ""),
        "lay in a drawer for ten years; wanted for a wedding", "", "box", "dial spotted at 7, hands straight, winds and does not go", 2, 360);

    public static readonly DemoIntake BookedIn = new("Q26-109", "Wrist watch, engraved back, does not go", Person("S. Marchetti", "555 0109", "", ""),
        "stood still after an evening in the rain", "1 120 556", "", "engraving worn, moisture under the glass, crown turns freely", 12, null);

    public static readonly DemoIntake Soaking = new("Q26-108", "Wrist watch, white dial, stops at night", Person("E. Nakamura", "555 0108", "nakamura", "27 Fable Lane"),
        "stops at night; was even before", "61 942", "strap, spare link", "case sound, glass clear, low swing dial down", 6, 400);

    public static readonly DemoIntake Inspecting = new("Q26-110", "Wrist watch, salmon dial, gains", Person("A. Fairweather", "555 0110", "fairweather", ""),
        "gains a quarter of an hour a day since it lay on a loudspeaker", "", "travel case", "like new, runs loud and fast", 9, 300);

    private static Owner Person(string name, string telephone, string mail, string address) =>
        new(name) { Telephone = telephone, Mail = mail.Length > 0 ? $"{mail}@example.org" : "", Address = address };

    /// <summary>As it is noted, on a bench where it is this day.</summary>
    public JobAction.NoteIntake Noted(DateOnly present) =>
        new(Serial, CameWith, PromisedIn is { } days ? present.AddDays(days) : null, Limit is { } limit ? TypedNumber.Of(limit) : null, Condition);
}
