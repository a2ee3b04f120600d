using System.Text;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports.Estimates;

/// <summary>An estimate with the condition of the piece, as plain text.</summary>
public sealed record TextEstimate(Estimate Estimate)
{
    private const int Width = 80, Names = 16;
    private const string Line = "____________________________________";

    /// <inheritdoc/>
    public override string ToString()
    {
        StringBuilder text = new();
        Write(text, Estimate.Workshop);
        Write(text, $"{Estimate.Title} {Estimate.Number}, {Days.Long(Estimate.Day)}");
        if (Estimate.IsDraft) Write(text, EstimateWords.Draft);
        Write(text, "");
        Named(text, "Piece", Estimate.What);
        if (Estimate.Serial.Length > 0) Named(text, "Serial", Estimate.Serial);
        if (Estimate.Owner.Length > 0) Named(text, "Owner", Estimate.Owner);
        Heading(text, "Condition");
        if (Estimate.OnArrival.Length > 0) Named(text, "On arrival", Estimate.OnArrival);
        Conditions(text, "Found", Estimate.Condition);
        Conditions(text, "Also seen", Estimate.AlsoSeen);
        if (Estimate.Condition.Count + Estimate.AlsoSeen.Count == 0) Write(text, EstimateWords.NothingFound);
        Heading(text, "Estimate");
        foreach (EstimateRow row in Estimate.Rows) Priced(text, row);
        if (Estimate.Rows.Count == 0) Write(text, EstimateWords.NothingToDecide);
        else
        {
            Write(text, $"{"Total",-Names}{Estimate.Total.PadLeft(Width - Names)}");
            if (Estimate.NotInTotal.Length > 0) Write(text, Estimate.NotInTotal);
        }
        foreach (string line in Estimate.AgreedBefore.Count == 0 ? [] : TextLines.Wrap($"{EstimateWords.AgreedBefore}: {string.Join("; ", Estimate.AgreedBefore)}.", Width)) Write(text, line);
        if (Estimate.Limit.Length > 0) Write(text, $"{EstimateWords.Limit}: {Estimate.Limit}.");
        Heading(text, "Your answer");
        foreach (string choice in EstimateWords.Choices) Write(text, $"[ ] {choice}");
        foreach (string sign in new[] { "Remarks", "Date", "Signature" })
        {
            Write(text, "");
            Write(text, $"{sign,-Names}{Line}");
        }
        return text.ToString();
    }

    private static void Conditions(StringBuilder text, string name, IReadOnlyList<ConditionLine> lines)
    {
        foreach (ConditionLine line in lines)
        {
            Named(text, name, $"{line.Where}: {line.What} ({line.Sure})");
            name = "";
        }
    }

    // The price stands at the right edge of the first line; what is to be done and the time follow below.
    private static void Priced(StringBuilder text, EstimateRow row)
    {
        string price = PlainText.Of(row.Price);
        List<string> finding = [.. TextLines.Wrap(row.Finding, Math.Max(20, Width - price.Length - 2))];
        Write(text, finding is [var first, ..] ? $"{first.PadRight(Width - price.Length)}{price}" : price.PadLeft(Width));
        foreach (string rest in finding.Skip(1)) Write(text, $"  {rest}");
        foreach (string rest in TextLines.Wrap($"{row.Done}{(row.Time.Length > 0 ? $"; {row.Time}" : "")}", Width - 2)) Write(text, $"  {rest}");
    }

    private static void Named(StringBuilder text, string name, string line)
    {
        string before = name.Length > 0 ? name + ":" : "";
        foreach (string part in TextLines.Wrap(line, Width - Names))
        {
            Write(text, before.PadRight(Names) + part);
            before = "";
        }
    }

    private static void Heading(StringBuilder text, string title)
    {
        Write(text, "");
        Write(text, title);
        Write(text, new string('-', title.Length));
    }

    private static void Write(StringBuilder text, string line) => TextLines.Line(text, line);
}
