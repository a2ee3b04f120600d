using System.Text;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports.Slips;

/// <summary>The owner's receipt as plain text. What was not given is not mentioned.</summary>
public sealed record TextReceipt(Slip Slip)
{
    private const int Width = 72, Names = 16;

    /// <inheritdoc/>
    public override string ToString()
    {
        StringBuilder text = new();
        TextLines.Line(text, Slip.Workshop);
        TextLines.Line(text, $"Receipt {Slip.Number}, {Days.Long(Slip.BookedIn)}");
        TextLines.Line(text, "");
        Row(text, "Piece", Slip.What);
        foreach ((string name, string line) in Slip.Lines) Row(text, name, line);
        if (Slip.Owner.Name.Length > 0) Row(text, "Owner", Slip.Owner.Name);
        foreach (string line in Slip.Owner.Lines) Row(text, "", line);
        TextLines.Line(text, "");
        TextLines.Line(text, "");
        TextLines.Line(text, $"{"Taken in by",-Names}____________________________________{(Slip.By.Length > 0 ? $"  {Slip.By}" : "")}");
        TextLines.Line(text, "");
        TextLines.Line(text, "");
        TextLines.Line(text, $"{"Handed in by",-Names}____________________________________");
        return text.ToString();
    }

    private static void Row(StringBuilder text, string name, string line)
    {
        string before = name.Length > 0 ? name + ":" : "";
        foreach (string part in TextLines.Wrap(line, Width - Names))
        {
            TextLines.Line(text, before.PadRight(Names) + part);
            before = "";
        }
    }
}

/// <summary>The tray's label as plain text.</summary>
public sealed record TextLabel(Slip Slip)
{
    private const int Width = 40;

    /// <inheritdoc/>
    public override string ToString()
    {
        StringBuilder text = new();
        TextLines.Line(text, Slip.Number);
        foreach (string line in TextLines.Wrap(Slip.What, Width)) TextLines.Line(text, line);
        foreach (string line in TextLines.Wrap(Slip.Owner.Name, Width)) TextLines.Line(text, line);
        if (Slip.Promised is { } day) TextLines.Line(text, $"Promised {Days.Long(day)}");
        return text.ToString();
    }
}
