using ServiceRunner.Files.Data;

namespace ServiceRunner.Session;

/// <summary>
/// Owners as lists ask for them: each file is read once. Nobody else writes there while the bench has the folder; a run
/// that only reads forgets what it knew when the other one has written.
/// </summary>
public sealed class OwnerBook(Owners owners)
{
    private readonly Dictionary<string, Owner?> _known = [];

    /// <summary>Raised with every change, for whoever remembers what a search found.</summary>
    public int Changes { get; private set; }

    /// <summary>The owner; null when there is none, or none any more.</summary>
    public Owner? Find(string id)
    {
        if (!_known.TryGetValue(id, out Owner? owner)) _known[id] = owner = owners.Find(id);
        return owner;
    }

    /// <summary>What lists call the owner of an id.</summary>
    public string NameOf(string id) => id.Length == 0 ? "" : Find(id)?.Name ?? "(erased)";

    /// <summary>Saves an owner; null when it is on the disk.</summary>
    public DataFault? Save(string id, Owner owner)
    {
        DataFault? fault = owners.Save(id, owner);
        Changes++;
        if (fault is null) _known[id] = owner;
        else _known.Remove(id);
        return fault;
    }

    /// <summary>Owners whose name contains a text, by name.</summary>
    public IReadOnlyList<(string Id, Owner Owner)> Named(string text) =>
    [
        .. owners.Ids().Select(id => (Id: id, Owner: Find(id))).Where(o => o.Owner is not null && o.Owner.Name.Contains(text, StringComparison.OrdinalIgnoreCase))
            .Select(o => (o.Id, o.Owner!)).OrderBy(o => o.Item2.Name, StringComparer.OrdinalIgnoreCase),
    ];

    /// <summary>What was read is read again when it is asked for.</summary>
    public void Forget()
    {
        Changes++;
        _known.Clear();
    }
}
