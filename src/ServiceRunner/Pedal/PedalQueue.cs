using System.Diagnostics.CodeAnalysis;

namespace ServiceRunner.Pedal;

/// <summary>The presses that wait for the bench, in the order in which they came.</summary>
internal sealed class PedalQueue(PedalLimits limits)
{
    private readonly LinkedList<PedalPress> _waiting = [];
    private bool _closed;

    /// <summary>Null when it is full or closed; then why says so.</summary>
    public PedalPress? Put(PedalWord word, out string why)
    {
        lock (_waiting)
        {
            why = _closed ? Closed : $"{limits.Waiting} presses wait for the bench already";
            if (_closed || _waiting.Count >= limits.Waiting) return null;
            PedalPress press = new(word, limits.Patience);
            _waiting.AddLast(press);
            return press;
        }
    }

    /// <summary>The oldest press that its sender still waits for.</summary>
    public bool TryTake([NotNullWhen(true)] out PedalPress? press)
    {
        lock (_waiting)
        {
            while (_waiting.First is { Value: var first })
            {
                _waiting.RemoveFirst();
                press = first;
                if (first.Take()) return true;
            }
        }
        press = null;
        return false;
    }

    /// <summary>Nobody waits for this press any more.</summary>
    public void Forget(PedalPress press)
    {
        lock (_waiting) _waiting.Remove(press);
    }

    /// <summary>Tells all that wait that the bench is gone.</summary>
    public void Close()
    {
        lock (_waiting)
        {
            _closed = true;
            foreach (PedalPress press in _waiting) press.Refuse(Closed);
            _waiting.Clear();
        }
    }

    private const string Closed = "the bench was closed";
}
