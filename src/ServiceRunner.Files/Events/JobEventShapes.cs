using System.Text.Json;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Events;

/// <summary>
/// The stored shapes of <see cref="JobEvent"/>: <c>kind</c> is a word and, after a dot, the version of its shape.
/// Names on disk are written here and nowhere else. Each is pinned by a file beside the tests; an old version stays
/// readable for ever.
/// </summary>
public static class JobEventShapes
{
    internal const string Served = "served.1", Done = "done.1";

    /// <summary>Writes one event as an object.</summary>
    public static void Write(Utf8JsonWriter w, JobEvent e)
    {
        w.WriteStartObject();
        switch (e)
        {
            case JobEvent.Opened x: Kind(w, "opened.1"); w.Text("number", x.Number); w.Text("what", x.What); w.Text("owner", x.Owner); break;
            case JobEvent.IntakeNoted x: Kind(w, "intake.1"); w.Text("serial", x.Serial); w.Text("accessories", x.Accessories); w.Day("promised", x.Promised); w.Typed("limit", x.CostLimit); w.Text("currency", x.Currency); w.Text("condition", x.Condition); break;
            case JobEvent.OwnerNamed x: Kind(w, "owner.1"); w.Text("owner", x.Owner); break;
            case JobEvent.ProcedureJoined x: Kind(w, "procedure-joined.1"); Joined(w, x); break;
            case JobEvent.FactAnswered x: Kind(w, "fact.1"); w.Text("fact", x.Fact); w.Text("answer", x.Answer); break;
            case JobEvent.Started: Kind(w, "started.1"); break;
            case JobEvent.Paused x: Kind(w, "paused.1"); w.Text("why", x.Why); break;
            case JobEvent.Resumed: Kind(w, "resumed.1"); break;
            case JobEvent.Held x: Kind(w, "held.1"); w.Text("for", StoredWords.Of(x.For)); w.Text("detail", x.Detail); w.Text("condition", x.Condition); w.Day("until", x.Until); break;
            case JobEvent.Restarted: Kind(w, "restarted.1"); break;
            case JobEvent.Stopped x: Kind(w, "stopped.1"); w.Text("reason", x.Reason); break;
            case JobEvent.Aborted x: Kind(w, "aborted.1"); w.Text("reason", x.Reason); break;
            case JobEvent.Completed: Kind(w, "completed.1"); break;
            case JobEvent.StepDone x: Kind(w, Done); w.Step(x.Step); w.Time("remembered", x.Remembered); break;
            case JobEvent.StepSkipped x: Kind(w, "skipped.1"); w.Step(x.Step); break;
            case JobEvent.StepBegunAgain x: Kind(w, "again.1"); w.Step(x.Step); break;
            case JobEvent.Confirmed x: Kind(w, "confirmed.1"); w.Step(x.Step); w.Text("ask", x.Ask); w.Text("answer", x.Answer); break;
            case JobEvent.Examined x: Kind(w, "examined.1"); w.Step(x.Step); w.Text("spot", x.Spot); w.Text("seen", x.Choice); break;
            case JobEvent.Measured x: Kind(w, x.Instrument.Length > 0 ? "measured.2" : "measured.1"); w.Step(x.Step); w.Text("what", x.What); w.Typed("value", x.Value); w.Text("unit", x.Unit); w.Number("least", x.AtLeast); w.Number("most", x.AtMost); w.Text("instrument", x.Instrument); break;
            case JobEvent.Felt x: Kind(w, "felt.1"); w.Step(x.Step); w.Text("what", x.What); w.Text("felt", x.Choice); break;
            case JobEvent.Counted x: Kind(w, "counted.1"); w.Step(x.Step); w.Text("what", x.What); w.Typed("value", x.Value); w.Text("unit", x.Unit); w.Number("least", x.AtLeast); w.Number("most", x.AtMost); break;
            case JobEvent.RateTaken x: Kind(w, "rate.1"); w.Step(x.Step); w.Number("hours", x.AfterHours); w.Text("position", x.Position); w.Typed("rate", x.Rate); w.Typed("amplitude", x.Amplitude); w.Typed("beat-error", x.BeatError); break;
            case JobEvent.PointServed x: Kind(w, Served); w.Step(x.Step); w.Text("point", x.Point); w.Text("role", x.Role); w.Text("lubricant", x.Lubricant); w.Text("batch", x.Batch); break;
            case JobEvent.AskLeft x: Kind(w, "left.1"); w.Step(x.Step); w.Text("ask", x.Ask); break;
            case JobEvent.SoakBegun x: Kind(w, "soak-begun.1"); Begun(w, x); break;
            case JobEvent.SoakEnded x: Kind(w, "soak-ended.1"); w.Step(x.Step); w.Seconds("length", x.Length); w.WriteBoolean("certain", x.Certain); break;
            case JobEvent.SoakLengthened x: Kind(w, "soak-lengthened.1"); w.Step(x.Step); w.Seconds("aim", x.Aim); break;
            case JobEvent.AlarmAnswered x: Kind(w, "alarm-answered.1"); w.Step(x.Step); w.Text("urgency", StoredWords.Of(x.Urgency)); break;
            case JobEvent.Marked x: Kind(w, "marked.1"); w.Step(x.Step); break;
            case JobEvent.PartMoved x: Kind(w, "part.1"); w.Text("part", x.Part); w.Text("to", StoredWords.Of(x.To).Word); w.Text("detail", StoredWords.Of(x.To).Detail); break;
            case JobEvent.PowerChanged x: Kind(w, "power.1"); w.Text("power", StoredWords.Of(x.Power)); w.Number("turns", x.Turns); break;
            case JobEvent.DrynessSeen x: Kind(w, "dryness.1"); w.Step(x.Step); w.Texts("points", x.Points); w.WriteBoolean("all-dry", x.AllDry); break;
            case JobEvent.EstimateNoted x: Kind(w, "estimate.1"); w.Step(x.Step); w.Text("text", x.Text); break;
            case JobEvent.ConsentNoted x: Kind(w, "consent.1"); w.Step(x.Step); w.Text("text", x.Text); break;
            case JobEvent.Witnessed x: Kind(w, "witnessed.1"); w.Step(x.Step); w.Text("witness", x.Initials); break;
            case JobEvent.FindingNoted x: Kind(w, "finding.1"); w.Text("finding", x.Finding); w.Text("spot", x.Spot); w.Text("part", x.Part); w.Text("what", x.What); w.Text("weight", StoredWords.Of(x.Weight)); w.Text("sure", StoredWords.Of(x.Sure)); break;
            case JobEvent.DeviationNoted x: Kind(w, "deviation.1"); w.Text("deviation", x.Kind); w.Step(x.Step); w.Text("detail", x.Detail); w.Text("reason", x.Reason); break;
            case JobEvent.PartAdded x: Kind(w, "part-added.1"); w.Text("part", x.Part); w.Text("name", x.Name); w.Text("compartment", x.Compartment); w.WriteNumber("count", x.Count); w.WriteNumber("jewels", x.Jewels); break;
            case JobEvent.PartRenewed x: Kind(w, "part-renewed.1"); w.Step(x.Step); w.Text("part", x.Part); w.Text("origin", StoredWords.Of(x.Origin)); w.Text("detail", x.Detail); break;
            case JobEvent.PartTended x: Kind(w, "part-tended.1"); w.Text("part", x.Part); w.Text("what", StoredWords.Of(x.What)); break;
            case JobEvent.WashBegunAgain x: Kind(w, "wash-again.1"); w.Text("part", x.Part); w.Texts("steps", [.. x.Steps.Select(s => s.ToString())]); break;
            case JobEvent.FindingWeighed x: Kind(w, "finding-weighed.1"); w.Text("finding", x.Finding); w.Text("weight", StoredWords.Of(x.Weight)); w.Text("sure", StoredWords.Of(x.Sure)); break;
            case JobEvent.FindingDecided x: Kind(w, "finding-decided.1"); w.Text("finding", x.Finding); w.Text("verdict", StoredWords.Of(x.Verdict)); w.Text("detail", x.Detail); break;
            case JobEvent.FindingPriced x: Priced(w, x); break;
            case JobEvent.FindingSettled x: Kind(w, "finding-settled.1"); w.Text("finding", x.Finding); w.Text("how", x.How); break;
            case JobEvent.PhotoKept x: Kind(w, "photo.1"); w.Text("finding", x.Finding); w.Step(x.Step); w.Text("name", x.Name); w.Text("sha256", x.Hash); w.Text("caption", x.Caption); break;
            case JobEvent.RepairJoined x: Kind(w, "repair.1"); w.Text("instance", x.Instance); w.Text("finding", x.Finding); w.Text("part", x.Part); break;
            case JobEvent.RepairGivenUp x: Kind(w, "repair-given-up.1"); w.Text("instance", x.Instance); break;
            case JobEvent.EstimateGiven x: Kind(w, "estimate-given.1"); w.Text("currency", x.Currency); Lines(w, x.Lines); break;
            case JobEvent.OwnerAnswered x: Kind(w, "owner-answered.1"); w.Texts("agreed", x.Agreed); w.Texts("declined", x.Declined); w.Text("how", StoredWords.Of(x.How)); w.Day("on", x.On); w.Text("words", x.Words); break;
            case JobEvent.TrayChecked x: Kind(w, "tray-checked.1"); w.WriteNumber("seen", x.Seen); w.Texts("missing", x.Missing); break;
            case JobEvent.TakenBack x: Kind(w, "taken-back.1"); w.WriteNumber("action", x.Action); break;
            default: throw new InvalidOperationException($"no stored shape for {e.GetType().Name}");
        }
        w.WriteEndObject();
    }

    /// <summary>Reads one event.</summary>
    /// <exception cref="UnknownEventException">A later program wrote it.</exception>
    /// <exception cref="FormatException">A value in it makes no sense.</exception>
    public static JobEvent Read(JsonElement e) => e.Text("kind") switch
    {
        "opened.1" => new JobEvent.Opened(e.Text("number"), e.Text("what"), e.Text("owner")),
        "intake.1" => new JobEvent.IntakeNoted(e.Text("serial"), e.Text("accessories"), e.Day("promised"), e.Typed("limit"), e.Text("currency"), e.Text("condition")),
        "owner.1" => new JobEvent.OwnerNamed(e.Text("owner")),
        "procedure-joined.1" => new JobEvent.ProcedureJoined(e.Text("instance"), e.Text("procedure"), e.Text("title"), e.Text("revision"), Pinned(e), e.Text("because")),
        "fact.1" => new JobEvent.FactAnswered(e.Text("fact"), e.Text("answer")),
        "started.1" => new JobEvent.Started(),
        "paused.1" => new JobEvent.Paused(e.Text("why")),
        "resumed.1" => new JobEvent.Resumed(),
        "held.1" => new JobEvent.Held(StoredWords.ReadHoldFor(e.Text("for")), e.Text("detail"), e.Text("condition"), e.Day("until")),
        "restarted.1" => new JobEvent.Restarted(),
        "stopped.1" => new JobEvent.Stopped(e.Text("reason")),
        "aborted.1" => new JobEvent.Aborted(e.Text("reason")),
        "completed.1" => new JobEvent.Completed(),
        Done => new JobEvent.StepDone(e.Step(), e.Time("remembered")),
        "skipped.1" => new JobEvent.StepSkipped(e.Step()),
        "again.1" => new JobEvent.StepBegunAgain(e.Step()),
        "confirmed.1" => new JobEvent.Confirmed(e.Step(), e.Text("ask"), e.Text("answer")),
        "examined.1" => new JobEvent.Examined(e.Step(), e.Text("spot"), e.Text("seen")),
        // The first version did not say with which instrument; it is what is written where none was stated.
        "measured.1" or "measured.2" => new JobEvent.Measured(e.Step(), e.Text("what"), Value(e), e.Text("unit"), e.Number("least"), e.Number("most")) { Instrument = e.Text("instrument") },
        "felt.1" => new JobEvent.Felt(e.Step(), e.Text("what"), e.Text("felt")),
        "counted.1" => new JobEvent.Counted(e.Step(), e.Text("what"), Value(e), e.Text("unit"), e.Number("least"), e.Number("most")),
        "rate.1" => new JobEvent.RateTaken(e.Step(), e.Number("hours"), e.Text("position"), e.Typed("rate") ?? throw new FormatException("a rate without its figure"), e.Typed("amplitude"), e.Typed("beat-error")),
        Served => new JobEvent.PointServed(e.Step(), e.Text("point"), e.Text("role"), e.Text("lubricant"), e.Text("batch")),
        "left.1" => new JobEvent.AskLeft(e.Step(), e.Text("ask")),
        "soak-begun.1" => new JobEvent.SoakBegun(e.Step(), StoredWords.ReadSoakKind(e.Text("clock")), e.Text("solution"), e.Text("jar"), e.Texts("parts"), Window(e)),
        "soak-ended.1" => new JobEvent.SoakEnded(e.Step(), e.Seconds("length") ?? TimeSpan.Zero, e.GetProperty("certain").GetBoolean()),
        "soak-lengthened.1" => new JobEvent.SoakLengthened(e.Step(), e.Seconds("aim") ?? TimeSpan.Zero),
        "alarm-answered.1" => new JobEvent.AlarmAnswered(e.Step(), StoredWords.ReadUrgency(e.Text("urgency"))),
        "marked.1" => new JobEvent.Marked(e.StepOrNone()),
        "part.1" => new JobEvent.PartMoved(e.Text("part"), StoredWords.ReadPlace(e.Text("to"), e.Text("detail"))),
        "power.1" => new JobEvent.PowerChanged(StoredWords.ReadPower(e.Text("power")), e.Number("turns")),
        "dryness.1" => new JobEvent.DrynessSeen(e.Step(), e.Texts("points"), e.GetProperty("all-dry").GetBoolean()),
        "estimate.1" => new JobEvent.EstimateNoted(e.Step(), e.Text("text")),
        "consent.1" => new JobEvent.ConsentNoted(e.Step(), e.Text("text")),
        "witnessed.1" => new JobEvent.Witnessed(e.Step(), e.Text("witness")),
        "finding.1" => new JobEvent.FindingNoted(e.Text("finding"), e.Text("spot"), e.Text("part"), e.Text("what"), StoredWords.ReadWeight(e.Text("weight")), StoredWords.ReadSureness(e.Text("sure"))),
        "deviation.1" => new JobEvent.DeviationNoted(e.Text("deviation"), e.StepOrNone(), e.Text("detail"), e.Text("reason")),
        "part-added.1" => new JobEvent.PartAdded(e.Text("part"), e.Text("name"), e.Text("compartment"), e.GetProperty("count").GetInt32(), e.GetProperty("jewels").GetInt32()),
        "part-renewed.1" => new JobEvent.PartRenewed(e.StepOrNone(), e.Text("part"), StoredWords.ReadOrigin(e.Text("origin")), e.Text("detail")),
        "part-tended.1" => new JobEvent.PartTended(e.Text("part"), StoredWords.ReadTending(e.Text("what"))),
        "wash-again.1" => new JobEvent.WashBegunAgain(e.Text("part"), [.. e.Texts("steps").Select(StepRef.Parse)]),
        "finding-weighed.1" => new JobEvent.FindingWeighed(e.Text("finding"), StoredWords.ReadWeight(e.Text("weight")), StoredWords.ReadSureness(e.Text("sure"))),
        "finding-decided.1" => new JobEvent.FindingDecided(e.Text("finding"), StoredWords.ReadVerdict(e.Text("verdict")), e.Text("detail")),
        "finding-priced.1" => new JobEvent.FindingPriced(e.Text("finding"), e.Typed("cost"), e.Seconds("time"), null),
        "finding-priced.2" => new JobEvent.FindingPriced(e.Text("finding"), e.Typed("cost"), e.Seconds("time"), e.Text("currency")),
        "finding-settled.1" => new JobEvent.FindingSettled(e.Text("finding"), e.Text("how")),
        "photo.1" => new JobEvent.PhotoKept(e.Text("finding"), e.StepOrNone(), e.Text("name"), e.Text("sha256"), e.Text("caption")),
        "repair.1" => new JobEvent.RepairJoined(e.Text("instance"), e.Text("finding"), e.Text("part")),
        "repair-given-up.1" => new JobEvent.RepairGivenUp(e.Text("instance")),
        "estimate-given.1" => new JobEvent.EstimateGiven(Lines(e), e.Text("currency")),
        "owner-answered.1" => new JobEvent.OwnerAnswered(e.Texts("agreed"), e.Texts("declined"), StoredWords.ReadMeans(e.Text("how")), e.Day("on") ?? throw new FormatException("an answer without its day"), e.Text("words")),
        "tray-checked.1" => new JobEvent.TrayChecked(e.GetProperty("seen").GetInt32(), e.Texts("missing")),
        "taken-back.1" => new JobEvent.TakenBack(e.GetProperty("action").GetInt32()),
        var kind => throw new UnknownEventException(kind),
    };

    private static void Kind(Utf8JsonWriter w, string kind) => w.WriteString("kind", kind);

    private static TypedNumber Value(JsonElement e) => e.Typed("value") ?? throw new FormatException("a measure without its figure");

    private static void Joined(Utf8JsonWriter w, JobEvent.ProcedureJoined x)
    {
        w.Text("instance", x.Instance);
        w.Text("procedure", x.Procedure);
        w.Text("title", x.Title);
        w.Text("revision", x.Revision);
        w.WriteStartArray("texts");
        foreach (PinnedText text in x.Texts)
        {
            w.WriteStartObject();
            w.WriteString("name", text.Name);
            w.WriteString("sha256", text.Hash);
            w.WriteEndObject();
        }
        w.WriteEndArray();
        w.Text("because", x.Because);
    }

    private static IReadOnlyList<PinnedText> Pinned(JsonElement e) =>
        [.. e.GetProperty("texts").EnumerateArray().Select(t => new PinnedText(t.Text("name"), t.Text("sha256")))];

    // The first version did not say in which currency: an event that was read from one is written as one.
    private static void Priced(Utf8JsonWriter w, JobEvent.FindingPriced x)
    {
        Kind(w, x.Currency is null ? "finding-priced.1" : "finding-priced.2");
        w.Text("finding", x.Finding);
        w.Typed("cost", x.Cost);
        w.Seconds("time", x.Time);
        w.Text("currency", x.Currency ?? "");
    }

    private static void Lines(Utf8JsonWriter w, IReadOnlyList<EstimateLine> lines)
    {
        w.WriteStartArray("lines");
        foreach (EstimateLine line in lines)
        {
            w.WriteStartObject();
            w.Text("finding", line.Finding);
            w.Typed("cost", line.Cost);
            w.Seconds("time", line.Time);
            w.WriteEndObject();
        }
        w.WriteEndArray();
    }

    private static IReadOnlyList<EstimateLine> Lines(JsonElement e) =>
        [.. e.GetProperty("lines").EnumerateArray().Select(l => new EstimateLine(l.Text("finding"), l.Typed("cost"), l.Seconds("time")))];

    private static void Begun(Utf8JsonWriter w, JobEvent.SoakBegun x)
    {
        w.Step(x.Step);
        w.Text("clock", StoredWords.Of(x.Kind));
        w.Text("solution", x.Solution);
        w.Text("jar", x.Jar);
        w.Texts("parts", x.Parts);
        w.Seconds("least", x.Window.Least);
        w.Seconds("aim", x.Window.Aim);
        w.Seconds("most", x.Window.Most);
    }

    private static Window Window(JsonElement e) => new(e.Seconds("least") ?? TimeSpan.Zero, e.Seconds("aim") ?? TimeSpan.Zero, e.Seconds("most"));
}
