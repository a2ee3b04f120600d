using System.Text;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>The sheets of a job as plain text: for a pipe, a printer, a mail to whoever makes the part.</summary>
/// <param name="Sheets">The sheets.</param>
public sealed record TextSheets(JobSheets Sheets)
{
    /// <summary>Writes them.</summary>
    public override string ToString() => string.Join('\n', Sheets.Sheets.Select(One));

    private string One(MakingSheet sheet)
    {
        StringBuilder text = new();
        string head = $"{Sheets.Workshop}: job {Sheets.Job.Number}";
        Line(text, head);
        Line(text, new string('=', head.Length));
        if (Sheets.ReadOnlyUpTo.Length > 0) Line(text, $"This sheet is not of the whole job. {Sheets.ReadOnlyUpTo}");
        Line(text, sheet.Title);
        Line(text, "");
        Line(text, $"For:       {Sheets.Job.What}");
        Line(text, $"By:        {sheet.Procedure.Title}, revision {sheet.Procedure.Revision}");
        if (sheet.Part.Length > 0) Line(text, $"Old part:  {sheet.Part}: {SheetWords.Old(sheet)}");
        Line(text, "");
        int names = sheet.Lines.Max(l => l.Name.Length), sizes = sheet.Lines.Max(l => SheetWords.Size(l).Length);
        foreach (MakingLine line in sheet.Lines)
        {
            Line(text, $"{line.Name.PadRight(names)}  {SheetWords.Size(line).PadRight(sizes)}  {SheetWords.Came(line)}");
        }
        Line(text, "");
        Line(text, SheetWords.State(sheet));
        return text.ToString();
    }

    private static void Line(StringBuilder text, string line) => text.Append(PlainText.Of(line)).Append('\n');
}
