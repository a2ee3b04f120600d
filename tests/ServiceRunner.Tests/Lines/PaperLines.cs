using System.Text;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Lines;
using ServiceRunner.Screens;
using ServiceRunner.Screens.Run;
using ServiceRunner.Tests.Screens;

namespace ServiceRunner.Tests.Lines;

/// <summary>
/// The real bench told line by line on paper: lines in, lines out, and a clock that the test moves. An entry comes two
/// seconds after the one before, unless the test says otherwise; it stands in the picture behind <c>&gt;</c>.
/// </summary>
internal sealed class PaperLines : IDisposable
{
    private readonly PaperBench _bench;
    private readonly StringBuilder _paper = new();
    private LineDialogue _dialogue;

    public PaperLines(bool inMemory = false)
    {
        _bench = new PaperBench(inMemory: inMemory);
        _dialogue = new LineDialogue(_bench.Shell);
    }

    public PaperBench Bench => _bench;

    public Shell Shell => _bench.Shell;

    public RunModel Run => _bench.Run;

    /// <summary>All that was written and said.</summary>
    public string Picture => _paper.ToString();

    /// <summary>What the last entry, or the last wait, brought.</summary>
    public IReadOnlyList<string> Last { get; private set; } = [];

    public PaperLines Greet(string why = "") => Keep(_dialogue.Greeting(why));

    /// <summary>The paper so far is thrown away; what was told stays told.</summary>
    public PaperLines NewPaper()
    {
        _paper.Clear();
        return this;
    }

    public PaperLines Say(params string[] entries)
    {
        foreach (string entry in entries)
        {
            Wait(TimeSpan.FromSeconds(2));
            SayAtOnce(entry);
        }
        return this;
    }

    /// <summary>An entry right behind the one before.</summary>
    public PaperLines SayAtOnce(string entry)
    {
        _paper.Append($"> {entry}".TrimEnd()).Append('\n');
        return Keep(_dialogue.Take(entry));
    }

    public PaperLines Wait(TimeSpan time)
    {
        _bench.Wait(time);
        string line = _dialogue.Tick();
        return Keep(line.Length > 0 ? [line] : []);
    }

    /// <summary>Many short looks: as it is when somebody waits.</summary>
    public PaperLines WaitSeconds(double seconds)
    {
        List<string> told = [];
        for (int i = 0; i < seconds; i++) told.AddRange(Wait(TimeSpan.FromSeconds(1)).Last);
        Last = told;
        return this;
    }

    public PaperLines Restart()
    {
        _bench.Restart();
        _dialogue = new LineDialogue(_bench.Shell);
        return this;
    }

    /// <summary>Goes on by lines alone until the step is at hand.</summary>
    public PaperLines To(string step)
    {
        for (int i = 0; i < 500; i++)
        {
            if (Run.Shown?.Step.Id.Value == step) return this;
            switch (Run.Offer)
            {
                case Offer.Fact or Offer.Answer { Act: null, Ask.Choices.Count: > 0 }: Say("1"); break;
                case Offer.Answer { Act: null } a: Say("", PaperBench.Typed(a.Ask)); break;
                case Offer.Wait w: Wait(w.Soak.Begun.Window.Aim - w.Soak.Length(Shell.Session.Now).Length + TimeSpan.FromSeconds(1)); break;
                default: Say(""); break;
            }
        }
        throw new InvalidOperationException($"'{step}' was never reached");
    }

    private PaperLines Keep(IReadOnlyList<string> lines)
    {
        Last = lines;
        foreach (string line in lines) _paper.Append(line).Append('\n');
        return this;
    }

    public void Dispose() => _bench.Dispose();
}
