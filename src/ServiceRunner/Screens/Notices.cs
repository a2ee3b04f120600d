namespace ServiceRunner.Screens;

/// <summary>
/// Sentences that no key asked for, one after the other. A key that was on its way already must not take one away
/// unread: each goes with the first key after it has stood long enough.
/// </summary>
internal sealed class Notices
{
    /// <summary>How long a sentence stands at least.</summary>
    public static readonly TimeSpan Least = TimeSpan.FromSeconds(3);

    private readonly Queue<string> _waiting = new();
    private TimeSpan? _since;

    public void Add(string sentence)
    {
        if (!_waiting.Contains(sentence)) _waiting.Enqueue(sentence);
    }

    /// <summary>The sentence to show now; empty if there is none.</summary>
    public string Show(TimeSpan now)
    {
        if (!_waiting.TryPeek(out string? sentence)) return "";
        _since ??= now;
        return sentence;
    }

    /// <summary>All of them, to be written where they stay.</summary>
    public IReadOnlyList<string> Take()
    {
        List<string> all = [.. _waiting];
        _waiting.Clear();
        return all;
    }

    /// <summary>A key was pressed.</summary>
    public void Pressed(TimeSpan now)
    {
        if (_since is not { } since || now - since < Least) return;
        _waiting.Dequeue();
        _since = null;
    }
}
