using ServiceRunner.Files.Data;

namespace ServiceRunner.Files.Journal;

/// <summary>
/// Both chains, followed line by line. After a line that cannot be read the bench's chain takes up the next one as it
/// is; the subject that lost a line shows it by its own chain.
/// </summary>
internal sealed class Chains(LogHead head, string? bench, Dictionary<string, SubjectHead>? subjects)
{
    private string? _bench = bench;
    private bool _lost;

    public LogHead Head { get; private set; } = head;

    public string? Bench => _bench;

    /// <summary>Each subject's last line; null when only the bench's chain is followed.</summary>
    public Dictionary<string, SubjectHead>? Subjects => subjects;

    public void Lose() => _lost = true;

    /// <summary>What is wrong with the line as a successor; null when it follows in both chains.</summary>
    public Damage? Follow(LogLine line)
    {
        Damage? damage = InBench(line);
        Head = new LogHead(line.Sequence, line.Hash);
        _bench = line.Bench;
        _lost = false;
        return OfSubject(line) is { } inner ? damage ?? inner : damage;
    }

    private Damage? InBench(LogLine line)
    {
        if (_bench is not null && line.Bench != _bench) return Damage.Bench;
        if (_lost) return line.Sequence > Head.Sequence ? null : Damage.Sequence;
        if (line.Sequence != Head.Sequence + 1) return Damage.Sequence;
        return line.PreviousLine == Head.Hash ? null : Damage.LineLink;
    }

    private Damage? OfSubject(LogLine line)
    {
        if (subjects is null) return null;
        SubjectHead last = subjects.GetValueOrDefault(line.Subject);
        subjects[line.Subject] = new SubjectHead(line.SubjectSequence, line.BodyHash);
        if (line.SubjectSequence != last.N + 1) return Damage.SubjectSequence;
        return line.PreviousBody == last.Hash ? null : Damage.BodyLink;
    }
}

/// <summary>The journal's last line: its number, and its hash, which stands for all lines before it.</summary>
public readonly record struct LogHead(long Sequence, Digest Hash);

/// <summary>A subject's last line.</summary>
internal readonly record struct SubjectHead(long N, Digest Hash);
