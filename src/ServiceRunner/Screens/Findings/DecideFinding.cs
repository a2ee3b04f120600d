using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Procedures;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Pick;

namespace ServiceRunner.Screens.Findings;

public sealed partial class FindingsModel
{
    private void Decide()
    {
        FindingEntry finding = Marked!;
        string suggested = finding.Suggested.Length > 0 ? TitleOf(finding.Suggested) : "a repair procedure comes into the job";
        Shell.Choose($"{Words(finding)}: what becomes of it?",
        [
            new Choice("Mend it here", suggested, () => ChooseRepair(finding, Verdict.RepairHere)),
            new Choice("Replace the part", "another piece takes its place; the old one is kept for the owner", () => ChooseRepair(finding, Verdict.Replace)),
            new Choice("Ask the owner", "it waits for the owner's word", () => Decided(finding, Verdict.AskOwner, "")),
            new Choice("Send it out", "somebody else mends it", () => Shell.Ask(new Prompt("To whom?", "May be left empty.", "", to => DecidedWith(finding, Verdict.SendOut, to)))),
            new Choice("It stays as it is", "", () => Shell.Ask(new Prompt("Why may it stay?", "A few words for the report; may be left empty.", "", why => DecidedWith(finding, Verdict.Accept, why)))),
            new Choice("It is done with", "it came back, or was put right in another way", () => Shell.Ask(Prompt.Words("How is it done with?", "As: came back from the wheel cutter, teeth good.", how =>
                Complaint(Session.Act(Job, new JobAction.SettleFinding(finding.Id, how)), "Done with.")))),
        ]);
    }

    private void Decided(FindingEntry finding, Verdict verdict, string detail) => Act(new JobAction.DecideFinding(finding.Id, verdict, detail), $"{Words(finding)}: {JobWords.Of(verdict)}.");

    private string DecidedWith(FindingEntry finding, Verdict verdict, string detail) =>
        Complaint(Session.Act(Job, new JobAction.DecideFinding(finding.Id, verdict, detail)), $"{Words(finding)}: {JobWords.Of(verdict)}.");

    private void ChooseRepair(FindingEntry finding, Verdict verdict) => Shell.Choose("By which procedure?",
    [
        .. Session.Library.List().Where(e => e.IsRepair && e.Fault is null).OrderByDescending(e => e.Id == finding.Suggested)
            .Select(e => new Choice(e.Title, e.Id == finding.Suggested ? $"named where it was found. {e.Covers}" : e.Covers, () => ChoosePart(finding, verdict, e.Id))),
        new Choice("By none yet", "only the decision is written down", () => Decided(finding, verdict, "")),
    ]);

    private void ChoosePart(FindingEntry finding, Verdict verdict, string procedure)
    {
        if (finding.Noted.Event.Part.Length > 0) BringIn(finding, verdict, procedure, finding.Noted.Event.Part);
        else Shell.Choose("Which part waits for this repair?",
        [
            new Choice("None of them", "", () => BringIn(finding, verdict, procedure, "")),
            .. Job.Plan.Parts.Select(p => new Choice(p.Name, JobWords.Of(State.PlaceOf(p.Id)), () => BringIn(finding, verdict, procedure, p.Id))),
        ]);
    }

    private void BringIn(FindingEntry finding, Verdict verdict, string procedure, string part)
    {
        if (Session.Library.Read(procedure) is not { Procedure: not null, HasErrors: false } read)
        {
            Shell.Say($"'{procedure}' has faults: run 'servicerunner check' on it first.", refusal: true);
            return;
        }
        if (verdict != finding.Fate.Verdict && !Act(new JobAction.DecideFinding(finding.Id, verdict, ""), "")) return;
        if (!Shell.Tell(Session.BringIn(Job, finding.Id, part, read), Job.Plan, "")) return;
        FindingEntry now = FindingsLedger.Find(State, Job.Plan, finding.Id)!;
        int waiting = Waits.Waiting.Count(w => w.Step.Key.Instance != now.Repairs[^1].Instance);
        string word = FindingsLedger.WantsConsent(State, finding.Id) ? " It costs, so it waits for the owner's word."
            : now is { WithinLimit: true, Fate.Cost.Value: > 0 } && AgreedLimit.Of(State) is { } limit ? $" It is {FindingWords.Limit(limit)}." : "";
        Shell.Say($"'{read.Procedure.Title}' is in the job, {Times.Count(now.Repairs[^1].Total, "step")}. {FindingWords.Counts(waiting, Waits.Free)}{word}");
    }
}
