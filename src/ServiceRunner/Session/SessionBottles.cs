namespace ServiceRunner.Session;

/// <summary>What was chosen and said about bottles since the program was started: each role is asked for once, and no more.</summary>
public sealed class SessionBottles
{
    private readonly Dictionary<string, string> _chosen = new(StringComparer.Ordinal);
    private readonly HashSet<string> _settled = new(StringComparer.Ordinal);

    /// <summary>The lubricant chosen for a role.</summary>
    public IReadOnlyDictionary<string, string> Chosen => _chosen;

    /// <summary>Chooses a lubricant for a role.</summary>
    public void Choose(string role, string lubricant)
    {
        _chosen[role] = lubricant;
        _settled.Add(role);
    }

    /// <summary>True the first time for a role: then the repairer is asked, or told.</summary>
    public bool IsFirst(string role) => _settled.Add(role);
}
