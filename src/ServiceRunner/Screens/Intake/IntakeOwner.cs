using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Machine;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Intake;

public sealed partial class IntakeModel
{
    private void AskOwner() => Ask("Owner", "A name, or a part of one that is known already.", Draft.Owner.Name, text =>
    {
        IntakeDraft now = Draft;
        if (text == now.Owner.Name) return "";
        if (text.Length == 0) return Change(now with { OwnerId = "", Owner = new Owner("") }, "owner");
        List<Choice> choices = [.. Session.Owners.Named(text).Where(o => o.Id != now.OwnerId).Select(o => new Choice(o.Owner.Name, About(o.Id, o.Owner), () => Take(o.Id, o.Owner)))];
        if (now.OwnerId.Length > 0) choices.Add(new Choice($"The same person as before, now written '{text}'", "", () => Take(now.OwnerId, now.Owner with { Name = text })));
        // Somebody who is not saved yet keeps the telephone that was typed before the name.
        Owner other = now.OwnerId.Length > 0 ? new Owner(text) : now.Owner with { Name = text };
        if (choices.Count == 0) return Change(now with { Owner = other }, "owner");
        choices.Add(new Choice($"Somebody new: {text}", "", () => Take("", other)));
        Shell.Choose("Whose is it?", choices);
        return "";
    });

    private string About(string id, Owner owner) =>
        string.Join("; ", new[] { IntakeWords.Contact(owner), string.Join(", ", Session.AllJobs().Where(r => r.Owner == id).Select(r => r.Number).TakeLast(4)) }.Where(t => t.Length > 0));

    private void Take(string id, Owner owner)
    {
        string complaint = Change(Draft with { OwnerId = id, Owner = owner }, "owner");
        if (complaint.Length > 0) Shell.Say(complaint, refusal: true);
    }

    // The file first, then the log: an id in the log that names nobody would read as erased.
    private string ChangeOwner(IntakeDraft next, string name)
    {
        if (next.Owner.IsNobody)
        {
            ActOutcome nobody = Session.Act(job!, new JobAction.NameOwner(""));
            if (nobody.IsDone) Shell.Say("Written down: it has no owner. Whoever it was stays in the list of owners; 'servicerunner erase-person' erases.");
            return nobody.Sentence(job!.Plan, Session.Folder.Path);
        }
        string id = next.OwnerId.Length > 0 ? next.OwnerId : Identity.New();
        if (Session.Owners.Find(id) != next.Owner && Session.Owners.Save(id, next.Owner) is { } fault) return FaultWords.Sentence(fault, Session.Folder.Path);
        ActOutcome outcome = id == job!.State.Owner ? new ActOutcome.Done([]) : Session.Act(job, new JobAction.NameOwner(id));
        if (outcome.IsDone) Shell.Say($"Kept beside the log: {name.ToLowerInvariant()}.");
        return outcome.Sentence(job.Plan, Session.Folder.Path);
    }

    // The id is remembered with the draft: if the booking then fails, trying again makes nobody twice.
    private string SaveOwner()
    {
        if (_draft.Owner.IsNobody) return "";
        if (_draft.OwnerId.Length == 0) _draft = _draft with { OwnerId = Identity.New() };
        if (Session.Owners.Find(_draft.OwnerId) == _draft.Owner) return "";
        return Session.Owners.Save(_draft.OwnerId, _draft.Owner) is { } fault ? FaultWords.Sentence(fault, Session.Folder.Path) : "";
    }
}
