using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Yaml;

/// <summary>What a YAML text holds. Every node knows where it stands.</summary>
public abstract record YNode(Place At)
{
    /// <summary>What it is, as a sentence names it.</summary>
    internal abstract string Kind { get; }
}

/// <summary>A single value, always as text: what it means is decided by whoever asks for it.</summary>
public sealed record YText(Place At, string Value, bool Quoted) : YNode(At)
{
    /// <summary>True if nothing was written.</summary>
    public bool IsNothing => !Quoted && (Value.Length == 0 || Value is "~" or "null");

    internal override string Kind => IsNothing ? "nothing" : "a single value";
}

/// <summary>A list.</summary>
public sealed record YList(Place At, IReadOnlyList<YNode> Items) : YNode(At)
{
    internal override string Kind => "a list";
}

/// <summary>Keys with values, in the order of the file, each key once.</summary>
public sealed record YMap(Place At, IReadOnlyList<YEntry> Entries) : YNode(At)
{
    internal override string Kind => "keys with values";

    /// <summary>The value under a key, or null.</summary>
    public YNode? this[string key]
    {
        get
        {
            foreach (YEntry entry in Entries)
            {
                if (entry.Key.Value == key) return entry.Value;
            }
            return null;
        }
    }
}

/// <summary>A key and its value.</summary>
public sealed record YEntry(YText Key, YNode Value);
