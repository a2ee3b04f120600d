using System.Globalization;
using System.Text;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>What was done in a job, as plain text: for a pipe, a printer, a mail.</summary>
/// <param name="Job">The job.</param>
/// <param name="Plan">Its procedures.</param>
/// <param name="Workshop">The workshop.</param>
/// <param name="Owner">The owner's name; empty if none was given or it was erased.</param>
/// <param name="Head">The journal's head as the report was made.</param>
public sealed record TextReport(Job Job, Plan Plan, Workshop Workshop, string Owner, string Head)
{
    private const int Width = 100;

    /// <summary>Writes it.</summary>
    public override string ToString()
    {
        StringBuilder text = new();
        Line(text, $"{Workshop.Name}: job {Job.Number}");
        Line(text, new string('=', Math.Min(Width, Workshop.Name.Length + Job.Number.Length + 6)));
        Line(text, $"What:       {Job.What}");
        if (Owner.Length > 0) Line(text, $"Owner:      {Owner}");
        Line(text, $"Booked in:  {Day(Job.OpenedAt.Wall)}");
        Line(text, $"Stands:     {JobWords.Of(Job.Phase)} since {Day(Job.Phase.Since.Wall)}");
        foreach (JobEvent.ProcedureJoined p in Job.Procedures) Line(text, $"By:         {p.Title}, revision {p.Revision}");
        if (Job.Phase is Phase.Held held) Line(text, $"Waits:      {held.Detail}; it lies {held.Condition}");
        Findings(text);
        Deviations(text);
        Steps(text);
        Soaks(text);
        Points(text);
        Rates(text);
        Parts(text);
        Section(text, "Marks", Job.Marks.Select(m => $"{Day(m.At.Wall)}, {m.By}{(m.Event.Step is { } s ? $", at '{Do(s.Key)}'" : "")}"));
        Owed owed = Owed.Of(Job, Plan);
        if (!Job.Phase.IsFinal && !owed.IsNothing) Section(text, "Still owed", [OfferWords.OwedWords(owed, Plan)]);
        Line(text, "");
        Line(text, $"{Times.Count(Job.Log.Count, "entry")} in the log of this job, {Times.Count(Job.TakenBack.Count, "entry")} of them taken back.");
        Line(text, $"Head of the journal: {Head}");
        return text.ToString();
    }

    private void Findings(StringBuilder text) => Section(text, "Findings", Job.Findings.Select(f =>
        $"{Clean(AskWords.Spoken(f.Event.Spot))}: {f.Event.What} ({JobWords.Of(f.Event.Weight)}; {f.By}, {Day(f.At.Wall)})"));

    private void Deviations(StringBuilder text) => Section(text, "Deviations", Job.Deviations.Select(d =>
        $"{JobWords.DeviationKind(d.Event.Kind)}{(d.Event.Step is { } s ? $", '{Do(s.Key)}'" : "")}{(d.Event.Detail.Length > 0 ? $": {d.Event.Detail}" : "")}{(d.Event.Reason.Length > 0 ? $". Reason: {d.Event.Reason}" : "")} ({d.By}, {Day(d.At.Wall)})"));

    private void Steps(StringBuilder text)
    {
        string stage = "";
        foreach (PlannedStep step in Plan.InForce(Job))
        {
            if (Job.Steps.GetValueOrDefault(step.Key) is not { } record) continue;
            if (step.Stage.Title != stage)
            {
                stage = step.Stage.Title;
                Heading(text, stage);
            }
            string end = record.End switch
            {
                null => "begun",
                { Done: false } e => $"passed over, {e.By}, {Day(e.At.Wall)}",
                { Remembered: { } when } e => $"{e.By}, entered {Day(e.At.Wall)} for {Day(when)}",
                var e => $"{e.By}, {Day(e.At.Wall)}",
            };
            Line(text, $"  {step.Step.Do}  [{end}]{(record.Step.Occurrence > 1 ? $" (time {record.Step.Occurrence})" : "")}");
            foreach (string answer in Answers(record.Step)) Wrapped(text, answer, "      ");
        }
    }

    private IEnumerable<string> Answers(StepRef step) => Job.Log.Where(e => !Job.TakenBack.Contains(e.Number)).SelectMany(e => e.Events).Select(e => e switch
    {
        JobEvent.Confirmed x when x.Step == step => $"{x.Ask} {x.Answer}",
        JobEvent.Examined x when x.Step == step => $"{AskWords.Spoken(x.Spot)}: {x.Choice}",
        JobEvent.Measured x when x.Step == step => $"{AskWords.Spoken(x.What)}: {x.Value} {x.Unit}{AskWords.Limits(x.AtLeast, x.AtMost, x.Unit)}",
        JobEvent.Felt x when x.Step == step => $"{AskWords.Spoken(x.What)}: felt {x.Choice}",
        JobEvent.Counted x when x.Step == step => $"{AskWords.Spoken(x.What)}: {x.Value} {x.Unit}{AskWords.Limits(x.AtLeast, x.AtMost, x.Unit)}",
        JobEvent.EstimateNoted x when x.Step == step => $"Estimate: {x.Text}",
        JobEvent.ConsentNoted x when x.Step == step => $"The owner's answer: {x.Text}",
        JobEvent.Witnessed x when x.Step == step => $"Second person: {x.Initials}",
        JobEvent.AskLeft x when x.Step == step => $"Left open: {AskWords.Spoken(x.Ask.Split(':')[^1])}",
        _ => "",
    }).Where(l => l.Length > 0);

    private void Soaks(StringBuilder text) => Section(text, "Baths and waits", Job.Soaks.Values.OrderBy(s => s.BegunAt.Wall).Select(s =>
        $"{JobWords.Clock(s.Begun, Workshop)}: {(s.Ended is { } e ? $"{Times.Clock(e.Length)}{(e.Certain ? "" : " by the wall clock, across a restart")}" : "still counting")} ({Times.Window(s.Begun.Window)}), {s.By}, {Day(s.BegunAt.Wall)}{(s.Begun.Parts.Count > 0 ? $"; {string.Join(", ", s.Begun.Parts.Select(Plan.NameOf))}" : "")}"));

    private void Points(StringBuilder text)
    {
        List<string> lines = [.. Job.Points.Values.OrderBy(p => p.At.Wall).Select(p =>
            $"{Plan.Point(p.Event.Point)?.Name ?? p.Event.Point}: {JobWords.Lubricant(Workshop, p.Event.Lubricant)}{(p.Event.Batch.Length > 0 ? $", bottle {p.Event.Batch}" : ", bottle not stated")} ({p.By}, {Day(p.At.Wall)})")];
        Section(text, "Oiling points", lines);
    }

    private void Rates(StringBuilder text) => Section(text, "Rates", Job.Log.Where(e => !Job.TakenBack.Contains(e.Number)).SelectMany(e => e.Events).OfType<JobEvent.RateTaken>().Select(r =>
        $"{(r.AfterHours is { } h ? string.Create(CultureInfo.InvariantCulture, $"{h} h, ") : "")}{AskWords.Spoken(r.Position, false)}: {r.Rate} s/d{(r.Amplitude is { } a ? $", {a}°" : "")}{(r.BeatError is { } b ? $", {b} ms" : "")}"));

    private void Parts(StringBuilder text) => Section(text, "Parts off the movement", Job.Parts.Where(p => p.Value is not PartPlace.OnMovement)
        .OrderBy(p => Plan.NameOf(p.Key), StringComparer.Ordinal).Select(p => $"{Plan.NameOf(p.Key)}: {JobWords.Of(p.Value)}"));

    private string Do(StepKey step) => Plan.Find(step)?.Step.Do ?? step.Step;

    private static void Section(StringBuilder text, string title, IEnumerable<string> lines)
    {
        List<string> all = [.. lines];
        if (all.Count == 0) return;
        Heading(text, title);
        foreach (string line in all) Wrapped(text, line, "  ");
    }

    private static void Heading(StringBuilder text, string title)
    {
        Line(text, "");
        Line(text, Clean(title));
        Line(text, new string('-', Clean(title).Length));
    }

    private static void Wrapped(StringBuilder text, string line, string indent)
    {
        string current = indent;
        foreach (string word in Clean(line).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (current.Length + word.Length + 1 > Width && current.Trim().Length > 0)
            {
                text.Append(current).Append('\n');
                current = indent + "  ";
            }
            current += current.Trim().Length == 0 ? word : $" {word}";
        }
        text.Append(current).Append('\n');
    }

    private static void Line(StringBuilder text, string line) => text.Append(Clean(line)).Append('\n');

    // What people typed must not move the cursor of whoever reads the report.
    private static string Clean(string text) => string.Concat(text.Select(c => char.IsControl(c) ? '·' : c));

    private static string Day(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
