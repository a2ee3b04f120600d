using System.Globalization;
using System.Text;
using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Events;
using ServiceRunner.Files.Index;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Procedures;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Session;

/// <summary>Turns verified lines into a job with its plan, and pins the texts that a plan is made of.</summary>
public sealed class JobReader(DataFolder folder)
{
    private readonly KeptTexts _kept = new(folder);
    private readonly Dictionary<string, Procedure> _procedures = [];

    /// <summary>Keeps texts by their content; null when all are on the disk.</summary>
    public DataFault? Keep(IReadOnlyList<SourceText> texts)
    {
        foreach (SourceText text in texts)
            if (_kept.Put(Encoding.UTF8.GetBytes(text.Text)) is KeptRefused refused) return refused.Fault;
        return null;
    }

    /// <summary>Keeps bytes by their content; null when they are on the disk.</summary>
    public DataFault? Keep(byte[] bytes, out string hash)
    {
        hash = KeptTexts.HashOf(bytes);
        return _kept.Put(bytes) is KeptRefused refused ? refused.Fault : null;
    }

    /// <summary>A job from its lines. Its procedures are read once they are asked for.</summary>
    public JobReading Read(string id, SubjectReading reading)
    {
        if (reading.Damage is { } damage) return new JobReading.Unreadable(FaultWords.Sentence(damage, folder.Path));
        if (reading.Lines.Count == 0) return new JobReading.Unreadable("There is no such job here.");
        (Job? job, string whyReadOnly) = FoldKnown(id, reading.Lines);
        if (job is null) return new JobReading.Unreadable("This job was written by a later version of this program.");
        return new JobReading.Ready(new OpenJob(id, job, j => (PlanOf(j, out string fault), fault), whyReadOnly));
    }

    /// <summary>The bench from its lines as far as they can be read, and why that is not to their end; null if it is.</summary>
    public (Bench Bench, DataFault? Fault) ReadBench(SubjectReading reading)
    {
        Bench bench = new() { Id = folder.Bench };
        foreach (LogLine line in reading.Lines)
        {
            try
            {
                if (line.FromTheFuture) return (bench, new BenchFromTheFuture(line.Version.ToString(CultureInfo.InvariantCulture)));
                bench = bench.After(EventLines.Bench(line));
            }
            catch (UnknownEventException e)
            {
                return (bench, new BenchFromTheFuture(e.Kind));
            }
            catch (Exception e) when (e is FormatException or KeyNotFoundException or InvalidOperationException)
            {
                return (bench, new BenchMakesNoSense(line.SubjectSequence, e.Message));
            }
        }
        return (bench, reading.Damage);
    }

    /// <summary>The index's row for a subject, from its lines alone; null if nothing can be said.</summary>
    public SubjectRow? RowOf(string subject, IReadOnlyList<LogLine> lines)
    {
        if (subject == folder.Bench)
        {
            (Bench bench, DataFault? fault) = ReadBench(new SubjectReading(lines, null));
            return fault is null && bench.LastAt is { } at ? JobRows.OfBench(subject, bench.CarriedAt, at) : null;
        }
        (Job? job, _) = FoldKnown(subject, lines);
        return job is null ? null : JobRows.Of(job, PlanOf(job, out _) ?? new Plan([]), null);
    }

    // Up to the first entry that a later program wrote: what follows it could mean anything.
    private static (Job? Job, string WhyReadOnly) FoldKnown(string id, IReadOnlyList<LogLine> lines)
    {
        List<LogEntry> known = new(lines.Count);
        foreach (LogLine line in lines)
        {
            try
            {
                if (line.FromTheFuture) return (Fold.All(id, known), Future(line.Version.ToString(CultureInfo.InvariantCulture)));
                known.Add(EventLines.Job(line));
            }
            catch (UnknownEventException e)
            {
                return (Fold.All(id, known), Future(e.Kind));
            }
            catch (Exception e) when (e is FormatException or KeyNotFoundException or InvalidOperationException)
            {
                return (Fold.All(id, known), string.Create(CultureInfo.InvariantCulture, $"Entry {line.SubjectSequence} of this job is whole but makes no sense ({e.Message}), so the job can only be read up to there."));
            }
        }
        return (Fold.All(id, known), "");
    }

    private static string Future(string what) => $"A later version of this program went on with this job ('{what}'), so it can only be read here; use that version.";

    private static Part Named(JobEvent.PartAdded e) =>
        new() { Id = new(e.Part, default), Name = e.Name, Compartment = e.Compartment, Count = e.Count, Jewels = e.Jewels };

    /// <summary>False if the workshop wants no second person to look.</summary>
    public bool AsksWitness { get; init; } = true;

    /// <summary>The plan of a job, or null and the sentence of why not.</summary>
    internal Plan? PlanOf(Job job, out string fault)
    {
        fault = "";
        List<Joined> procedures = [];
        foreach (JobEvent.ProcedureJoined joined in job.Procedures)
        {
            if (ProcedureOf(joined, out fault) is not { } procedure) return null;
            procedures.Add(new Joined(joined.Instance, procedure, job.Repairs.FirstOrDefault(r => r.Instance == joined.Instance)?.Part ?? ""));
        }
        return new Plan(procedures, job.AddedParts.Select(Named)) { AsksWitness = AsksWitness };
    }

    private Procedure? ProcedureOf(JobEvent.ProcedureJoined joined, out string fault)
    {
        fault = "";
        string key = string.Join(' ', joined.Texts.Select(t => t.Hash));
        if (_procedures.TryGetValue(key, out Procedure? known)) return known;
        List<SourceText> texts = [];
        foreach (PinnedText pinned in joined.Texts)
        {
            switch (_kept.Get(pinned.Hash))
            {
                case KeptBytes kept:
                    texts.Add(SourceText.Of(pinned.Name, Encoding.UTF8.GetString(kept.Bytes)));
                    break;
                case KeptUnreadable unreadable:
                    fault = FaultWords.Sentence(unreadable.Fault, folder.Path);
                    return null;
            }
        }
        Procedure? procedure = ProcedureReader.Read(texts[0].Name, texts[0].Text, new ProcedureLibrary(ProcedureSource.Pinned(texts))).Procedure;
        if (procedure is null) fault = $"The procedure text that this job pinned ({joined.Procedure}) cannot be read by this version.";
        else _procedures[key] = procedure;
        return procedure;
    }
}
