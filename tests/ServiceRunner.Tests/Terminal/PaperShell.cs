using ServiceRunner.Screens;

namespace ServiceRunner.Tests.Terminal;

/// <summary>A shell for these tests: it writes down what it is told, and opens an entry with e.</summary>
internal sealed class PaperShell : IShell
{
    private int _id;
    private bool _bell;

    public List<string> Keys { get; } = [];
    public List<string> Accepted { get; } = [];
    public List<string> Left { get; } = [];
    public int Ticks { get; private set; }
    public int Drawn { get; private set; }
    public int Resumptions { get; private set; }
    public string Start { get; set; } = "";
    public string Line { get; set; } = "";
    public bool EntryAgain { get; set; }

    public Entry? Entry { get; private set; }
    public bool Done { get; private set; }

    public Sheet Draw(int width, int height)
    {
        Drawn++;
        Sheet sheet = new(width, height);
        sheet.Paint(0, 0, width, Ink.Bar);
        sheet.Write(0, 0, $"paper {width}×{height}", Ink.Bar);
        sheet.Write(1, 1, Line);
        sheet.Write(1, 2, $"keys {Keys.Count}", Ink.Strong);
        if (Entry is { } entry) sheet.Write(1, 3, entry.Label);
        return sheet;
    }

    public void Press(Stroke key)
    {
        Keys.Add(key.Name);
        switch (key.Name)
        {
            case "e" or "PageDown": Open(); break;
            case "q": Done = true; break;
            case "b": _bell = true; break;
            case "x": throw new InvalidOperationException("out of ink");
        }
    }

    private void Open() => Entry = new Entry(++_id, "Note", Start, 8, 3, 12);

    public void Accept(string text)
    {
        Accepted.Add(text);
        Entry = null;
        if (EntryAgain) Open();
    }

    public void Leave(string text)
    {
        Left.Add(text);
        Entry = null;
    }

    public void Tick()
    {
        Ticks++;
        if (Line == "torn") throw new InvalidOperationException("torn");
    }

    public bool TakeBell()
    {
        bool bell = _bell;
        _bell = false;
        return bell;
    }

    public void Resumed() => Resumptions++;
}
