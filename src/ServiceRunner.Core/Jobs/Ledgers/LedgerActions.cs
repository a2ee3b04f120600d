using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Jobs;

public abstract partial record JobAction
{
    /// <summary>Adds a part that no procedure names; the compartment is empty if it is still on the movement.</summary>
    public sealed record AddPart(string Name, string Compartment, int Count = 1, int Jewels = 0) : JobAction;

    /// <summary>Lets another piece stand for a part.</summary>
    public sealed record RenewPart(string Part, Origin Origin, string Detail) : JobAction;

    /// <summary>Says that a part was cleaned, dried or looked over by itself.</summary>
    public sealed record TendPart(string Part, Tending What) : JobAction;

    /// <summary>Takes up again the baths, spin-offs and dryings that a part was left out of.</summary>
    public sealed record WashAgain(string Part) : JobAction;

    /// <summary>Weighs a finding anew.</summary>
    public sealed record WeighFinding(string Finding, Weight Weight, Sureness Sure) : JobAction;

    /// <summary>Decides a finding.</summary>
    public sealed record DecideFinding(string Finding, Verdict Verdict, string Detail) : JobAction;

    /// <summary>Says what a finding will cost.</summary>
    public sealed record PriceFinding(string Finding, TypedNumber? Cost, TimeSpan? Time) : JobAction;

    /// <summary>Says that a finding is done with.</summary>
    public sealed record SettleFinding(string Finding, string How) : JobAction;

    /// <summary>Keeps a picture that lies on the disk already.</summary>
    public sealed record KeepPhoto(string Finding, StepRef? Step, string Name, string Hash, string Caption) : JobAction;

    /// <summary>
    /// Brings a procedure into the job as the repair for a finding. The instance of <paramref name="Joined"/> is given
    /// here, whatever it says. Facts are by their names in that procedure.
    /// </summary>
    public sealed record BringIn(string Finding, string Part, JobEvent.ProcedureJoined Joined, IReadOnlyDictionary<string, string> Facts) : JobAction;

    /// <summary>Gives a repair up: what is left of it is passed over.</summary>
    public sealed record GiveUpRepair(string Instance, string Reason) : JobAction;

    /// <summary>Tells the owner what it would cost: every finding that is to be mended, sent out or asked about and has no answer yet.</summary>
    public sealed record GiveEstimate(string Currency) : JobAction;

    /// <summary>Writes down what the owner said.</summary>
    public sealed record TakeAnswer(IReadOnlyList<string> Agreed, IReadOnlyList<string> Declined, Means How, DateOnly On, string Words) : JobAction;
}
