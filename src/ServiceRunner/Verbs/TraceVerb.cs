using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Session;

namespace ServiceRunner.Verbs;

/// <summary>Answers which jobs and which points had a batch, as text or as JSON.</summary>
internal static class TraceVerb
{
    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static int Run(string path, string batch, bool json)
    {
        // As the owner it is quick, by the index on the disk; beside a bench that is open it reads the journal.
        using BenchSession? session = House.Open(path, OpenMode.Own, new MachineClock(), out int exit, otherwise: OpenMode.Read);
        if (session is null) return exit;
        TracedBatch traced = session.Trace(batch.Trim());
        string beyond = string.Concat(session.Notes.OfType<ReadsUpTo>().Select(n => NoteWords.Sentence(n, path)));
        if (json) Write(traced, beyond, Console.OpenStandardOutput());
        else Write(traced, session.Workshop, Console.Out);
        if (beyond.Length > 0) Console.Error.WriteLine($"servicerunner: {beyond} What lies behind it is not in this answer.");
        foreach (TracedUse use in traced.Uses.Where(u => u.Fault.Length > 0)) Console.Error.WriteLine($"servicerunner: {PlainText.Of(use.Number)}: {PlainText.Of(use.Fault)}");
        if (traced.Uses.Count == 0) Console.Error.WriteLine($"servicerunner: no job in {path} had anything from a bottle '{PlainText.Of(traced.Batch)}'; the name must be as it was written down, the whole of it.");
        return beyond.Length > 0 || traced.Uses.Any(u => u.Fault.Length > 0) ? ExitCodes.Damaged : traced.Uses.Count == 0 ? ExitCodes.NotThere : ExitCodes.Done;
    }

    private static void Write(TracedBatch traced, Workshop workshop, TextWriter to)
    {
        if (traced.Uses.Count == 0) return;
        to.WriteLine($"{PlainText.Of(traced.Batch)}: {Times.Count(traced.Points, "point")} in {Times.Count(traced.Uses.Count, "job")}.");
        foreach (TracedUse use in traced.Uses)
        {
            to.WriteLine();
            to.WriteLine(PlainText.Of($"{use.Number}  {use.What}"));
            foreach (TracedPoint p in use.Points)
            {
                string afterwards = p.Remembered is { } when ? $", entered afterwards for {Stamp(when)}" : "";
                to.WriteLine(PlainText.Of($"  {Stamp(p.At)}  {p.By}  {p.Name}: {JobWords.Role(p.Role)}, {JobWords.Lubricant(workshop, p.Lubricant)}{afterwards}"));
            }
            if (use.Fault.Length > 0) to.WriteLine(PlainText.Of($"  not all of it can be told: {use.Fault}"));
        }
    }

    private static string Stamp(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    private static void Write(TracedBatch traced, string beyond, Stream to)
    {
        using Utf8JsonWriter w = new(to, Options);
        w.WriteStartObject();
        w.WriteNumber("format", 1);
        w.WriteString("batch", traced.Batch);
        if (beyond.Length > 0) w.WriteString("not-read", beyond);
        w.WriteStartArray("jobs");
        foreach (TracedUse use in traced.Uses)
        {
            w.WriteStartObject();
            w.WriteString("number", use.Number);
            w.WriteString("what", use.What);
            w.WriteString("job", use.Job);
            if (use.Fault.Length > 0) w.WriteString("fault", use.Fault);
            w.WriteStartArray("points");
            foreach (TracedPoint p in use.Points)
            {
                w.WriteStartObject();
                w.WriteString("point", p.Point);
                w.WriteString("name", p.Name);
                w.WriteString("role", p.Role);
                w.WriteString("lubricant", p.Lubricant);
                w.WriteString("by", p.By);
                w.WriteString("at", p.At.ToString("O", CultureInfo.InvariantCulture));
                if (p.Remembered is { } when) w.WriteString("remembered", when.ToString("O", CultureInfo.InvariantCulture));
                w.WriteNumber("entry", p.Entry);
                w.WriteEndObject();
            }
            w.WriteEndArray();
            w.WriteEndObject();
        }
        w.WriteEndArray();
        w.WriteEndObject();
        w.Flush();
        to.WriteByte((byte)'\n');
    }
}
