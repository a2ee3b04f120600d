using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Lubricants;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Baths;
using ServiceRunner.Screens.Parts;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Run;

/// <summary>
/// Draws a step: its caution before its act, then the act, what it moves and asks, and below it the clocks. Where rows
/// are short, the least needed go first: what comes then, why, how.
/// </summary>
internal static class RunPage
{
    private const int Margin = 2;

    /// <summary>Stands below what speaks against a step.</summary>
    public const string AllTheSame = "Going on all the same is written down as a deviation.";

    private sealed record Block(int Need, IReadOnlyList<(int X, string Text, Ink Ink)[]> Rows);

    public static void Draw(Sheet sheet, int top, int rows, RunModel model, Shell shell)
    {
        Job job = model.Job.State;
        List<(OpenJob Job, Soak Soak)> clocks = [.. shell.Session.RunningSoaks().OrderByDescending(c => c.Job == model.Job)];
        int clockRows = clocks.Count == 0 ? 0 : Math.Min(clocks.Count, rows < 16 ? 1 : 4) + 1;
        sheet.Write(1, top, Progress(model, sheet.Width - 2), Ink.Faint);
        List<Block> blocks = model.Shown is { } step ? Step(step, model, shell, sheet.Width - 2 * Margin) : Phase(model, shell, sheet.Width - 2 * Margin);
        int room = rows - 1 - clockRows, y = top + 1;
        foreach (Block block in Fitting(blocks, room))
            foreach ((int X, string Text, Ink Ink)[] row in block.Rows)
            {
                if (y >= top + 1 + room) break;
                foreach ((int x, string text, Ink ink) in row) sheet.Write(Margin + x, y, text, ink);
                y++;
            }
        if (clocks.Count == 0) return;
        int line = top + rows - clockRows;
        sheet.Write(1, line, clocks.Count > clockRows - 1 ? $"Clocks ({clocks.Count}; F4 shows all)" : "Clocks", Ink.Faint);
        for (int i = 0; i < clockRows - 1; i++) BathsPage.Line(sheet, line + 1 + i, clocks[i], shell, shell.Session.Now);
    }

    /// <summary>The stage, or the repair, and how much of it is done; how many steps wait for a fault.</summary>
    public static (string Text, int Done, int Total) Along(RunModel model)
    {
        string stage = model.Shown?.Stage.Title ?? "";
        (int done, int total) = JobRows.Progress(model.Job.State, model.Job.Plan);
        if (model.RepairShown is { } repair) (stage, done, total) = ($"Repair: {repair.Title}", repair.Total - repair.Left, repair.Total);
        string wait = model.Waits.Waiting.Count is > 0 and var waiting ? $", {waiting} {(waiting == 1 ? "waits" : "wait")}" : "";
        return (model.LooksBack ? $"Looking back: {stage}" : $"{(stage.Length > 0 ? $"{stage}, " : "")}{done} of {total} steps done{wait}", done, total);
    }

    private static string Progress(RunModel model, int width)
    {
        (string text, int done, int total) = Along(model);
        int bar = Math.Clamp(width - Sheet.Columns(text) - 3, 0, 40);
        int full = total == 0 ? 0 : bar * done / total;
        return bar < 8 ? text : $"{text}  {new string('━', full)}{new string('╌', bar - full)}";
    }

    // Whole blocks go, the least needed first, until the rest fits.
    private static List<Block> Fitting(List<Block> blocks, int room)
    {
        List<Block> kept = [.. blocks];
        while (kept.Sum(b => b.Rows.Count) > room && kept.Any(b => b.Need > 0)) kept.Remove(kept.MaxBy(b => b.Need)!);
        return kept;
    }

    private static List<Block> Step(PlannedStep planned, RunModel model, Shell shell, int width)
    {
        // A fact decides whether the step is in the job at all: until it is answered, only the question is shown.
        if (!model.LooksBack && model.Offer is Offer.Fact fact)
            return [Gap(8), Text(0, fact.Question.Ask, Ink.Title, width, ""), Gap(7), Choices(fact.Question.Answers, hoped: false, width), Gap(8), Text(5, "Some steps depend on it. Choose by its number.", Ink.Faint, width, "")];
        Step step = planned.Step;
        Job job = model.Job.State;
        Plan plan = model.Job.Plan;
        List<Block> blocks = [Gap(8)];
        foreach (string caution in step.Cautions.Select(c => c.Value)) blocks.Add(Text(0, Cautions.Sentence(caution), Ink.Caution, width, "▲ "));
        if (step.Cautions.Count > 0) blocks.Add(Text(6, Cautions.Defer, Ink.Faint, width, "  "));
        blocks.Add(Gap(7));
        if (!model.LooksBack && model.Offer is Offer.End end)
        {
            blocks.Add(Text(0, OfferWords.TakeOut(end, shell.Session.Workshop), Ink.Title, width, ""));
            blocks.Add(Text(5, step.Do, Ink.Faint, width, "It was: "));
        }
        else
        {
            blocks.Add(Text(0, step.Do, Ink.Title, width, ""));
        }
        // What speaks against the act is read before it is done.
        foreach (Blocker blocker in model.Against) blocks.Add(Text(0, RejectionWords.Sentence(blocker, plan), Ink.Caution, width, "Not yet: "));
        if (model.Against.Count > 0 && model.Offer is not Offer.Stuck) blocks.Add(Text(6, AllTheSame, Ink.Faint, width, ""));
        blocks.Add(Gap(9));
        if (step.How.Length > 0) blocks.Add(Text(4, step.How, Ink.Plain, width, ""));
        if (step.Why.Length > 0) blocks.Add(Text(5, step.Why, Ink.Faint, width, "Why: "));
        foreach ((string name, string text) in Facts(planned, job, plan, shell)) blocks.Add(Text(3, text, Ink.Plain, width, $"{name}: "));
        if (BathsPage.Renewal(model.Offer, shell) is { Length: > 0 } renewal) blocks.Add(Text(2, $"{renewal} F4, then j, says that it was.", Ink.Caution, width, ""));
        if (model.LooksBack) blocks.Add(Done(planned, job, plan, shell, width));
        else blocks.AddRange(Asks(planned, model, shell, width));
        if (model.Then is { } then) blocks.AddRange([Gap(10), Text(9, then.Step.Do, Ink.Faint, width, "Then: ")]);
        return blocks;
    }

    /// <summary>What a step moves, needs and takes.</summary>
    public static IEnumerable<(string Name, string Text)> Facts(PlannedStep planned, Job job, Plan plan, Shell shell)
    {
        Step step = planned.Step;
        string Parts(IEnumerable<Placed<string>> parts) => string.Join(", ", parts.Select(p => plan.NameOf(p)));
        if (step.Removes.Count > 0)
            yield return ("Takes off", string.Join("; ", step.Removes.GroupBy(p => plan.Part(p)?.Compartment ?? "").Select(g => $"{Parts(g)}{(g.Key.Length > 0 ? $" → {JobWords.Compartment(g.Key)}" : "")}")));
        if (step.Tries.Count > 0) yield return ("Tries dry", Parts(step.Tries));
        if (step.Fits.Count > 0)
            yield return ("Fits", string.Join(", ", step.Fits.Select(p => job.PlaceOf(p) is PartPlace.InTray { Compartment.Length: > 0 } tray ? $"{plan.NameOf(p)} (from {JobWords.Compartment(tray.Compartment)})" : plan.NameOf(p))));
        if (step.Replaces.Count > 0) yield return ("Replaces", Parts(step.Replaces));
        if (step.Clock is { } clock) yield return (ClockName(clock), ClockText(clock));
        foreach ((string, string) line in Basket(planned, job, plan, shell)) yield return line;
        if (step.Brush is { } brush) yield return ("Brush", $"{Parts(brush.Parts)}{(brush.With.Length > 0 ? $", with {brush.With}" : "")}");
        if (step.Peg is { } peg) yield return ("Peg", $"{string.Join(", ", peg.Places)}{(peg.With.Length > 0 ? $", with {peg.With}" : "")}");
        if (step.Coat is { } coat) yield return ("Coat", $"{Parts(coat.Parts)}{(coat.With.Length > 0 ? $", with {AskWords.Spoken(coat.With, false)}" : "")}");
        if (step.Power is { } power) yield return ("Power", power switch { PowerFacet.LetsDown => "off after this", PowerFacet.SetUp s => string.Create(CultureInfo.InvariantCulture, $"set up {s.Turns} turns"), _ => "on after this" });
        if (step.Demagnetise) yield return ("Demagnetise", "hold it, move it slowly out of the field before switching off");
        if (step.Photo.Length > 0) yield return ("Photo", step.Photo);
        if (step.Uses.Count > 0) yield return ("Uses", string.Join(", ", step.Uses.Select(u => AskWords.Spoken(u.Value, false))));
        if (step.Takes is { } takes) yield return ("Takes about", Times.Length(takes));
    }

    private static string ClockName(ClockFacet clock) => clock switch { ClockFacet.Bath => "Bath", ClockFacet.Spin => "Spin off", ClockFacet.Dry => "Dry", _ => "Wait" };

    // Before the clock runs, what would go in; then, what went in.
    private static IEnumerable<(string Name, string Text)> Basket(PlannedStep planned, Job job, Plan plan, Shell shell)
    {
        if (planned.Step.Clock is not { Parts.Count: > 0 } clock) yield break;
        bool begun = job.Soaks.TryGetValue(job.At(planned.Key), out Soak? soak);
        (IReadOnlyList<string> inside, IReadOnlyList<string> left) = begun
            ? (soak!.Begun.Parts, [.. clock.Parts.Select(p => p.Value).Except(soak.Begun.Parts)]) : PartsLedger.Basket(job, plan, planned);
        yield return (begun ? "Went in" : "Goes in", inside.Count == 0 ? "nothing" : PartWords.Together(job, plan, inside));
        if (left.Count == 0) yield break;
        yield return ("Left out", begun ? PartWords.Together(job, plan, left) : string.Join("; ", left
            .GroupBy(p => PartWords.LeftOut(job, plan, shell.Session.Workshop, planned, p)).Select(g => $"{PartWords.Together(job, plan, [.. g])} ({g.Key})")));
    }

    private static string ClockText(ClockFacet clock)
    {
        string what = clock switch
        {
            ClockFacet.Bath b => $"{AskWords.Spoken(b.Solution.Value, false)}{(b.Celsius is { } t ? string.Create(CultureInfo.InvariantCulture, $" at {t} °C") : "")}{(b.Ultrasonic ? ", ultrasonic" : "")}{(b.Agitate.Length > 0 ? $", {b.Agitate}" : "")}; ",
            ClockFacet.Dry d => $"{AskWords.Spoken(d.By.Value, false)}{(d.Celsius is { } t ? string.Create(CultureInfo.InvariantCulture, $" at {t} °C") : "")}; ",
            ClockFacet.Wait w => w.For.Length > 0 ? $"{w.For}; " : "",
            _ => "",
        };
        return $"{what}{Times.Window(clock.Window)}";
    }

    private static IEnumerable<Block> Asks(PlannedStep planned, RunModel model, Shell shell, int width)
    {
        IReadOnlyList<Ask> open = Ask.Open(model.Job.State, planned, model.Job.Plan);
        if (open.Count == 0) yield break;
        yield return Gap(8);
        bool atHand = model.Offer is Offer.Answer;
        for (int i = 0; i < open.Count; i++)
        {
            bool first = i == 0 && atHand;
            yield return Text(first ? 0 : 7, AskWords.Question(open[i]), first ? Ink.Strong : Ink.Faint, width, first ? "› " : "  ");
            if (!first) continue;
            if (open[i].Choices.Count > 0) yield return Choices(open[i].Choices, hoped: open[i] is Ask.Examine or Ask.Measure, width);
            if (open[i] is Ask.Oil oil)
            {
                Circumstances at = shell.Session.Circumstances(model.Job);
                yield return Text(0, OilWords.Serving(oil.Point, model.Job.Plan, at), Ink.Plain, width, "    ");
                foreach (PointConcern concern in model.Concerns) yield return Text(0, OilWords.Concern(concern, at.BenchCelsius), Ink.Caution, width, "    Mind: ");
            }
            if (open[i] is Ask.Measure measure && InstrumentWords.With(measure.Facet.Unit, shell.Session.Circumstances(model.Job)) is { Length: > 0 } with) yield return Text(1, with, Ink.Plain, width, "    ");
            if (open[i] is not Ask.Oil && open[i].Typable) yield return Text(6, $"v types it. {AskWords.Form(open[i])}", Ink.Faint, width, "    ");
        }
    }

    private static Block Choices(IReadOnlyList<string> choices, bool hoped, int width)
    {
        List<(int X, string Text, Ink Ink)[]> rows = [];
        List<(int X, string Text, Ink Ink)> row = [];
        int x = 4;
        for (int i = 0; i < choices.Count; i++)
        {
            int wide = Sheet.Columns(choices[i]) + 2;
            if (row.Count > 0 && x + wide > width)
            {
                rows.Add([.. row]);
                (row, x) = ([], 4);
            }
            row.Add((x, i < 9 ? $"{i + 1}" : " ", Ink.Key));
            row.Add((x + 2, choices[i], hoped && i == 0 ? Ink.Strong : Ink.Plain));
            x += wide + 3;
        }
        rows.Add([.. row]);
        return new Block(0, rows);
    }

    private static Block Done(PlannedStep planned, Job job, Plan plan, Shell shell, int width) =>
        new(0, [.. DoneWords(planned, job, plan, shell).SelectMany(l => Paragraph.Wrap(l, width)).Select(l => new[] { (0, l, Ink.Good) })]);

    /// <summary>How a step was settled, and what was answered in it.</summary>
    public static IReadOnlyList<string> DoneWords(PlannedStep planned, Job job, Plan plan, Shell shell)
    {
        StepRecord record = job.Steps[planned.Key];
        string how = record.End!.Done ? "Done" : "Passed over";
        string remembered = record.End.Remembered is { } when ? $", entered afterwards for {Times.When(when, shell.Session.Now.Wall)}" : "";
        List<string> lines = [$"{how} by {record.End.By}, {Times.When(record.End.At.Wall, shell.Session.Now.Wall)}{remembered}."];
        foreach (LogEntry entry in job.Log.Where(e => !job.TakenBack.Contains(e.Number)))
            foreach (JobEvent e in entry.Events)
                if (Told(e, record.Step, plan, shell) is { Length: > 0 } line) lines.Add(line);
        return lines;
    }

    private static string Told(JobEvent e, StepRef step, Plan plan, Shell shell) => e switch
    {
        _ when AnswerLine.Of(e, shell.Session.Workshop) is { } answer => answer.Step == step ? answer.Line.Sentence : "",
        JobEvent.PointServed x when x.Step == step => $"{plan.Point(x.Point)?.Name ?? x.Point}: {JobWords.Lubricant(shell.Session.Workshop, x.Lubricant)}{(x.Batch.Length > 0 ? $", bottle {x.Batch}" : "")}",
        JobEvent.RateTaken x when x.Step == step => $"{AskWords.Spoken(x.Position)}: {JobWords.Rate(x)}",
        JobEvent.SoakEnded x when x.Step == step => $"In it for {Times.Clock(x.Length)}{(x.Certain ? "" : ", by the wall clock across a restart")}",
        JobEvent.DeviationNoted x when x.Step == step => $"Deviation, {JobWords.DeviationKind(x.Kind)}{(x.Detail.Length > 0 ? $": {JobWords.DeviationDetail(x)}" : "")}{(x.Reason.Length > 0 ? $". Reason: {x.Reason}" : "")}",
        _ => "",
    };

    private static List<Block> Phase(RunModel model, Shell shell, int width)
    {
        Job job = model.Job.State;
        DateTimeOffset now = shell.Session.Now.Wall;
        List<Block> blocks = [Gap(8), Text(0, Capital(JobWords.Of(job.Phase)), Ink.Title, width, ""), Text(0, $"since {Times.When(job.Phase.Since.Wall, now)}, {Times.For(now - job.Phase.Since.Wall)}", Ink.Faint, width, ""), Gap(7)];
        switch (job.Phase)
        {
            case Core.Jobs.Phase.Idle:
                blocks.Add(Text(0, $"By {Times.List(job.Procedures.Select(p => $"'{p.Title}', revision {p.Revision}"))}.", Ink.Plain, width, ""));
                break;
            case Core.Jobs.Phase.Paused:
                blocks.Add(Text(0, "The place is marked. Look at what lies before you against the last three steps:", Ink.Plain, width, ""));
                foreach (PlannedStep step in model.Settled.TakeLast(3)) blocks.Add(Text(0, step.Step.Do, Ink.Strong, width, "  "));
                break;
            case Core.Jobs.Phase.Held x:
                if (x.Detail.Length > 0) blocks.Add(Text(0, x.Detail, Ink.Strong, width, ""));
                blocks.Add(Text(0, x.Condition, Ink.Plain, width, "It lies: "));
                if (x.Until is { } until) blocks.Add(Text(0, Days.Short(until, DateOnly.FromDateTime(now.Date)), until <= DateOnly.FromDateTime(now.Date) ? Ink.Caution : Ink.Plain, width, until <= DateOnly.FromDateTime(now.Date) ? "▲ Due: " : "Until: "));
                if (TrayChecks.Stands(shell, model.Job) is { Length: > 0 } check) blocks.Add(Text(0, check, Ink.Plain, width, "The tray: "));
                blocks.Add(Text(1, Times.List(model.Settled.TakeLast(3).Select(s => s.Step.Do)), Ink.Plain, width, "Done last: "));
                break;
            case Core.Jobs.Phase.Stopped x: blocks.Add(Text(0, x.Reason, Ink.Plain, width, "")); break;
            case Core.Jobs.Phase.Aborted x: blocks.Add(Text(0, x.Reason, Ink.Plain, width, "")); break;
        }
        foreach ((string name, string noted) in IntakeWords.Lines(job.Intake)) blocks.Add(Text(5, noted, Ink.Plain, width, $"{name}: "));
        Owed owed = Owed.Of(job, model.Job.Plan);
        if (job.Phase is Core.Jobs.Phase.Running) blocks.Add(Text(0, OfferWords.WhyNothing(model.Offer, shell.Session.Workshop, model.Job.Plan, shell.Session.Now), Ink.Strong, width, ""));
        if (owed.Parts.Count > 0) blocks.AddRange([Gap(6), Text(3, string.Join("; ", owed.Parts.GroupBy(p => JobWords.Of(job.PlaceOf(p))).Select(g => $"{g.Key}: {string.Join(", ", g.Select(model.Job.Plan.NameOf))}")), Ink.Plain, width, "Off the movement: ")]);
        if (Agreed(job) is { Length: > 0 } agreed) blocks.Add(Text(3, agreed, Ink.Plain, width, "Agreed with the owner: "));
        if (job.Findings.Count > 0) blocks.Add(Text(3, string.Join("; ", job.Findings.Select(f => FindingWords.Of(f.Event, model.Job.Plan))), Ink.Plain, width, "Findings: "));
        return blocks;
    }

    private static string Agreed(Job job) => job.Log.Where(e => !job.TakenBack.Contains(e.Number)).SelectMany(e => e.Events).OfType<JobEvent.ConsentNoted>().LastOrDefault()?.Text ?? "";

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private static Block Gap(int need) => new(need, [[]]);

    private static Block Text(int need, string text, Ink ink, int width, string before)
    {
        int indent = Sheet.Columns(before);
        IReadOnlyList<string> lines = Paragraph.Wrap(text, width - indent);
        return new Block(need, [.. lines.Select((l, i) => i == 0 ? new[] { (0, before, ink is Ink.Plain or Ink.Faint ? Ink.Faint : ink), (indent, l, ink) } : [(indent, l, ink)])]);
    }
}
