using System.Globalization;
using System.Text;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>What was done in a job, as plain text: for a pipe, a printer, a mail.</summary>
/// <param name="Story">What was done.</param>
public sealed record TextReport(JobStory Story)
{
    private const int Width = 100;

    /// <summary>Writes it.</summary>
    public override string ToString()
    {
        StringBuilder text = new();
        Job job = Story.Job;
        Line(text, $"{Story.Workshop}: job {job.Number}");
        Line(text, new string('=', Math.Min(Width, Story.Workshop.Length + job.Number.Length + 6)));
        Line(text, $"What:       {job.What}");
        if (Story.Owner.Length > 0) Line(text, $"Owner:      {Story.Owner}");
        foreach ((string name, string noted) in IntakeWords.Lines(job.Intake)) Line(text, $"{name + ":",-12}{noted}");
        Line(text, $"Booked in:  {Day(job.OpenedAt.Wall)}");
        Line(text, $"Stands:     {JobWords.Of(job.Phase)} since {Day(job.Phase.Since.Wall)}");
        foreach (JobEvent.ProcedureJoined p in job.Procedures) Line(text, $"By:         {p.Title}, revision {p.Revision}");
        if (Story.ReadOnlyUpTo.Length > 0) Wrapped(text, $"This report is not the whole job. {Story.ReadOnlyUpTo}", "");
        if (job.Phase is Phase.Held held) Line(text, $"Waits:      {held.Detail}; it lies {held.Condition}{(held.Until is { } until ? string.Create(CultureInfo.InvariantCulture, $"; until {until:yyyy-MM-dd}") : "")}");
        Section(text, "What was answered about the movement", Story.Facts.Select(f => $"{f.Question} {f.Answer}"));
        Findings(text);
        Section(text, "Deviations", Story.Deviations.Select(Deviation));
        foreach (IGrouping<string, StageStory> repair in Story.Stages.GroupBy(s => s.Repair))
        {
            if (repair.Key.Length > 0) Heading(text, repair.Key);
            foreach (StageStory stage in repair) Stage(text, stage);
        }
        Section(text, "Baths and waits", [.. Story.Soaks.Select(Soak), .. Story.Baskets.Select(b => $"{char.ToUpperInvariant(b.Name[0])}{b.Name[1..]}: {string.Join("; ", b.Parts)}.")]);
        Section(text, "Oiling points", Story.Points.Where(p => p.State == PointState.Served).OrderBy(p => p.At).Select(p =>
            $"{p.Name}: {p.Lubricant}{(p.Batch.Length > 0 ? $", bottle {p.Batch}" : ", bottle not stated")} ({p.By}, {Day(p.At!.Value)})"));
        foreach (RateLines rates in Story.Rates) Section(text, $"Rates, {rates.Step}", rates.Rates.Select(Rate));
        Section(text, "Parts", Story.Parts.Select(p => $"{p.What}: {p.Which}{(p.Who.Length > 0 ? $" ({p.Who})" : "")}"));
        Section(text, "Marks", Story.Marks.Select(m => $"{Day(m.At)}, {m.By}{(m.Step.Length > 0 ? $", at '{m.Step}'" : "")}"));
        Section(text, "Pictures", Story.Pictures.Select(Picture));
        if (!job.Phase.IsFinal && !Story.Owed.IsNothing) Section(text, "Still owed", [Story.OwedBriefly]);
        Line(text, "");
        Line(text, $"{Times.Count(job.Log.Count, "entry")} in the log of this job, {Times.Count(job.TakenBack.Count, "entry")} of them taken back.");
        Line(text, $"Head of the journal: {Story.Head}");
        return text.ToString();
    }

    private void Findings(StringBuilder text)
    {
        if (Story.Findings.Count > 0) Heading(text, "Findings");
        foreach (FindingLine finding in Story.Findings)
        {
            Wrapped(text, $"{finding.Place}: {finding.What} ({JobWords.Of(finding.Weight)}, {JobWords.Of(finding.Sure)}; {finding.By}, {Day(finding.At)})", "  ");
            foreach (string line in finding.Fate.Concat(finding.Pictures.Select(p => $"Picture: {Picture(p)}."))) Wrapped(text, line, "      ");
        }
        if (Story.OwnersWord.Count > 0) Heading(text, "Estimates and the owner's answers");
        foreach (OwnerLine line in Story.OwnersWord)
        {
            Wrapped(text, $"{line.On}, {line.By}: {line.What}", "  ");
            foreach (string of in line.Lines) Wrapped(text, of, "      ");
        }
    }

    private static string Picture(PictureLine picture) => $"{picture.Name}{(picture.Caption.Length > 0 ? $" ({picture.Caption})" : "")}, kept as {picture.Hash}";

    private static string Deviation(DeviationLine d) =>
        $"{d.Kind}{(d.Step.Length > 0 ? $", '{d.Step}'" : "")}{(d.Detail.Length > 0 ? $": {d.Detail}" : "")}{(d.Reason.Length > 0 ? $". Reason: {d.Reason}" : "")} ({d.By}, {Day(d.At)})";

    private static void Stage(StringBuilder text, StageStory stage)
    {
        Heading(text, stage.Title);
        foreach (StepLine step in stage.Steps)
        {
            string end = step.End switch
            {
                null => "begun",
                { Done: false } e => $"passed over, {e.By}, {Day(e.At.Wall)}",
                { Remembered: { } when } e => $"{e.By}, entered {Day(e.At.Wall)} for {Day(when)}",
                var e => $"{e.By}, {Day(e.At.Wall)}",
            };
            Line(text, $"  {step.Do}  [{end}]{(step.Occurrence > 1 ? $" (time {step.Occurrence})" : "")}");
            foreach (AnswerLine answer in step.Answers) Wrapped(text, answer.Sentence, "      ");
        }
    }

    private static string Soak(SoakLine s) =>
        $"{s.Name}: {(s.Ran is { } ran ? $"{Times.Clock(ran)}{(s.Certain ? "" : " by the wall clock, across a restart")}" : "still counting")} ({Times.Window(s.Planned)}), {s.By}, {Day(s.At)}{(s.Inside.Length > 0 ? $"; {s.Inside}" : "")}";

    private static string Rate(JobEvent.RateTaken r) =>
        $"{(r.AfterHours is { } h ? string.Create(CultureInfo.InvariantCulture, $"{h} h, ") : "")}{AskWords.Spoken(r.Position, false)}: {JobWords.Rate(r)}";

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
        Line(text, PlainText.Of(title));
        Line(text, new string('-', PlainText.Of(title).Length));
    }

    private static void Wrapped(StringBuilder text, string line, string indent)
    {
        string current = indent;
        foreach (string word in PlainText.Of(line).Split(' ', StringSplitOptions.RemoveEmptyEntries))
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

    private static void Line(StringBuilder text, string line) => text.Append(PlainText.Of(line)).Append('\n');

    private static string Day(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
