using ServiceRunner.Lines;

namespace ServiceRunner.Screens;

/// <summary>One screen: what it shows, and what can be done there. It knows no terminal.</summary>
public abstract class ScreenModel(Shell shell)
{
    /// <summary>The shell that shows it.</summary>
    protected Shell Shell { get; } = shell;

    /// <summary>Its name in the head and in the help page.</summary>
    public abstract string Name { get; }

    /// <summary>What can be done, in the order of the help page.</summary>
    public abstract IReadOnlyList<ScreenAction> Actions { get; }

    /// <summary>Draws the body between the head and the foot.</summary>
    /// <param name="sheet">The whole sheet.</param>
    /// <param name="top">First row of the body.</param>
    /// <param name="rows">Rows of the body.</param>
    public abstract void Draw(Sheet sheet, int top, int rows);

    /// <summary>What stands at the left of the head.</summary>
    public virtual string Head => Name;

    /// <summary>A key that none of the actions has; true if it meant something.</summary>
    public virtual bool Press(Stroke key) => false;

    /// <summary>True if letters and the space are typed here, and mean nothing else.</summary>
    public virtual bool TakesLetters => false;

    /// <summary>A key was pressed or an answer given: what changes now is the repairer's doing.</summary>
    public virtual void Touched() { }

    /// <summary>Called several times a second.</summary>
    public virtual void Tick() { }

    /// <summary>What it shows, told line by line. A screen that has no words of its own has its rows read out.</summary>
    public virtual IEnumerable<Telling> Sentences() => SheetWords.Of(this);

    /// <summary>What else is known here, told line by line when it is asked for.</summary>
    public virtual IEnumerable<Telling> MoreSentences() => [];

    /// <summary>Names what is at hand. Where it changes by itself, line by line tells the new at once; empty where that cannot be.</summary>
    public virtual string Topic => "";

    /// <summary>Takes the thing of that number; false if there is none.</summary>
    public virtual bool TakeNumber(int number) => number is >= 1 and <= 9 && Press(new Stroke($"{number}"));
}
