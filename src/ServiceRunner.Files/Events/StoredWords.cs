using ServiceRunner.Core.Jobs;

namespace ServiceRunner.Files.Events;

/// <summary>Stored words of the small closed lists. They are a contract: a rename in code changes none of them.</summary>
internal static class StoredWords
{
    public static string Of(HoldFor value) => value switch { HoldFor.Owner => "owner", HoldFor.Part => "part", HoldFor.Day => "day", _ => "other" };

    public static HoldFor ReadHoldFor(string word) => word switch { "owner" => HoldFor.Owner, "part" => HoldFor.Part, "day" => HoldFor.Day, _ => HoldFor.Other };

    public static string Of(Power value) => value switch { Power.On => "on", Power.Off => "off", _ => "unknown" };

    public static Power ReadPower(string word) => word switch { "on" => Power.On, "off" => Power.Off, _ => Power.Unknown };

    public static string Of(Weight value) => value switch { Weight.Note => "note", Weight.Service => "service", _ => "stops" };

    public static Weight ReadWeight(string word) => word switch { "note" => Weight.Note, "service" => Weight.Service, "stops" => Weight.StopsTheWork, _ => throw new FormatException($"weight '{word}'") };

    public static string Of(Sureness value) => value switch { Sureness.Seen => "seen", Sureness.Inferred => "inferred", _ => "unknown" };

    public static Sureness ReadSureness(string word) => word switch { "seen" => Sureness.Seen, "inferred" => Sureness.Inferred, _ => Sureness.Unknown };

    public static string Of(Origin value) => value switch { Origin.Supplied => "supplied", Origin.MadeNew => "made", Origin.OldStock => "old-stock", _ => "" };

    public static Origin ReadOrigin(string word) => word switch { "supplied" => Origin.Supplied, "made" => Origin.MadeNew, "old-stock" => Origin.OldStock, _ => Origin.Unsaid };

    public static string Of(Tending value) => value switch { Tending.Cleaned => "cleaned", Tending.Dried => "dried", _ => "inspected" };

    public static Tending ReadTending(string word) => word switch { "cleaned" => Tending.Cleaned, "dried" => Tending.Dried, "inspected" => Tending.Inspected, _ => throw new FormatException($"tending '{word}'") };

    public static string Of(Verdict value) => value switch { Verdict.Accept => "accept", Verdict.RepairHere => "repair", Verdict.Replace => "replace", Verdict.SendOut => "send-out", _ => "ask-owner" };

    public static Verdict ReadVerdict(string word) => word switch
    {
        "accept" => Verdict.Accept,
        "repair" => Verdict.RepairHere,
        "replace" => Verdict.Replace,
        "send-out" => Verdict.SendOut,
        "ask-owner" => Verdict.AskOwner,
        _ => throw new FormatException($"verdict '{word}'"),
    };

    public static string Of(Means value) => value switch { Means.InPerson => "in-person", Means.Telephone => "telephone", Means.Writing => "writing", _ => "other" };

    public static Means ReadMeans(string word) => word switch { "in-person" => Means.InPerson, "telephone" => Means.Telephone, "writing" => Means.Writing, _ => Means.Other };

    public static string Of(Urgency value) => value switch { Urgency.High => "high", Urgency.Medium => "medium", _ => "low" };

    public static Urgency ReadUrgency(string word) => word switch { "high" => Urgency.High, "medium" => Urgency.Medium, "low" => Urgency.Low, _ => throw new FormatException($"urgency '{word}'") };

    public static string Of(SoakKind value) => value switch { SoakKind.Bath => "bath", SoakKind.Spin => "spin", SoakKind.Dry => "dry", _ => "wait" };

    public static SoakKind ReadSoakKind(string word) => word switch { "bath" => SoakKind.Bath, "spin" => SoakKind.Spin, "dry" => SoakKind.Dry, "wait" => SoakKind.Wait, _ => throw new FormatException($"clock '{word}'") };

    public static (string Word, string Detail) Of(PartPlace place) => place switch
    {
        PartPlace.OnMovement => ("on", ""),
        PartPlace.TriedDry => ("tried", ""),
        PartPlace.InTray x => ("tray", x.Compartment),
        PartPlace.SetAside x => ("aside", x.Why),
        PartPlace.SentOut x => ("out", x.To),
        PartPlace.Lost => ("lost", ""),
        PartPlace.Replaced x => ("replaced", x.By),
        _ => throw new InvalidOperationException($"no word for {place.GetType().Name}"),
    };

    public static PartPlace ReadPlace(string word, string detail) => word switch
    {
        "on" => new PartPlace.OnMovement(),
        "tried" => new PartPlace.TriedDry(),
        "tray" => new PartPlace.InTray(detail),
        "aside" => new PartPlace.SetAside(detail),
        "out" => new PartPlace.SentOut(detail),
        "lost" => new PartPlace.Lost(),
        "replaced" => new PartPlace.Replaced(detail),
        _ => throw new FormatException($"place '{word}'"),
    };
}
