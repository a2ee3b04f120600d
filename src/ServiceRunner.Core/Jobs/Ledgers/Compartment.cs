using System.Globalization;

namespace ServiceRunner.Core.Jobs;

/// <summary>A place in a tray: <c>B7</c> is the seventh of row B, <c>2/A1</c> lies in the tray of repair 2.</summary>
/// <param name="Tray">The repair whose tray it is; empty for the job's own.</param>
/// <param name="Row">The letters before the number; the whole name where it is none of letters and a number.</param>
/// <param name="Number">The number in its row, or null.</param>
public readonly record struct Compartment(string Tray, string Row, int? Number)
{
    /// <summary>Reads a compartment as a procedure or a person writes it.</summary>
    public static Compartment Of(string text)
    {
        (string tray, string name) = Procedures.ApartId.Split(text);
        int letters = name.TakeWhile(char.IsLetter).Count();
        return int.TryParse(name[letters..], NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            ? new Compartment(tray, name[..letters].ToUpperInvariant(), number)
            : new Compartment(tray, name, null);
    }

    /// <summary>Where a part's compartment is: where it lies, or where it would lie. Null if nobody said.</summary>
    public static Compartment? Home(Job job, Plan plan, string part) => Named(job, plan, part) is { Length: > 0 } named ? Of(named) : null;

    /// <summary>The same as it is written; empty if it has none.</summary>
    public static string Named(Job job, Plan plan, string part) =>
        job.PlaceOf(part) is PartPlace.InTray { Compartment.Length: > 0 } tray ? tray.Compartment : plan.Part(part)?.Compartment ?? "";

    /// <summary>The job's own tray first, then by row and number; what has a name of its own comes last in its tray.</summary>
    public static readonly Comparer<Compartment> InOrder = Comparer<Compartment>.Create(Compare);

    private static int Compare(Compartment a, Compartment b)
    {
        int order = a.Tray.Length != b.Tray.Length ? a.Tray.Length.CompareTo(b.Tray.Length) : string.CompareOrdinal(a.Tray, b.Tray);
        if (order == 0) order = (a.Number is null).CompareTo(b.Number is null);
        if (order == 0 && a.Number is not null) order = a.Row.Length.CompareTo(b.Row.Length);
        if (order == 0) order = string.CompareOrdinal(a.Row, b.Row);
        return order != 0 ? order : Nullable.Compare(a.Number, b.Number);
    }
}
