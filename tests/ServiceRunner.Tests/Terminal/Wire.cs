using System.Drawing;
using System.Text;
using Terminal.Gui.Drivers;

namespace ServiceRunner.Tests.Terminal;

/// <summary>The line to a terminal that is not there: all that would be sent to it is kept.</summary>
internal sealed class Wire : OutputBase, IOutput
{
    private readonly StringBuilder _sent = new();
    private Size _size = new(80, 24);
    private Cursor _cursor = new();

    /// <summary>What was sent since the last time that this was asked.</summary>
    public string Take()
    {
        string sent = _sent.ToString();
        _sent.Clear();
        return sent;
    }

    public Size GetSize() => _size;

    public void SetSize(int width, int height) => _size = new Size(width, height);

    public Cursor GetCursor() => _cursor;

    public void SetCursor(Cursor cursor)
    {
        _sent.Append(cursor.IsVisible ? "\e[?25h" : "\e[?25l");
        if (cursor.Position is { } at) SetCursorPositionImpl(at.X, at.Y);
        _cursor = cursor;
    }

    protected override bool SetCursorPositionImpl(int screenPositionX, int screenPositionY)
    {
        _sent.Append($"\e[{screenPositionY + 1};{screenPositionX + 1}H");
        return true;
    }

    protected override void Write(StringBuilder output) => _sent.Append(output);

    public void Write(ReadOnlySpan<char> text) => _sent.Append(text);

    public void Suspend()
    {
    }

    public void Dispose()
    {
    }
}
