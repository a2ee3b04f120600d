using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Checks.Reading;
using ServiceRunner.Files.Checks.References;

namespace ServiceRunner.Files.Procedures;

/// <summary>The parts, points and questions of a file, with those of the files that it takes in.</summary>
internal sealed class Belongings
{
    private readonly ProcedureFile _file;
    private readonly List<Diagnostic> _found;
    private readonly Dictionary<string, Part> _parts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, OilingPoint> _points = new(StringComparer.Ordinal);
    private readonly List<JobQuestion> _asks = [];
    private readonly Dictionary<string, JobQuestion> _asked = new(StringComparer.Ordinal);

    public Belongings(ProcedureFile file, List<Diagnostic> found)
    {
        (_file, _found) = (file, found);
        foreach (Part part in file.Parts)
        {
            if (part.Id.Value.Length > 0 && !_parts.TryAdd(part.Id.Value, part))
                found.Add(DuplicateId.Of(file.File, part.Id.At, "part", part.Id.Value, _parts[part.Id.Value].Id.At));
        }
        foreach (OilingPoint point in file.Points)
        {
            if (point.Id.Value.Length > 0 && !_points.TryAdd(point.Id.Value, point))
                found.Add(DuplicateId.Of(file.File, point.Id.At, "oiling point", point.Id.Value, _points[point.Id.Value].Id.At));
        }
        foreach (JobQuestion ask in file.Asks)
        {
            if (_asked.TryAdd(ask.Fact.Value, ask)) _asks.Add(ask);
        }
    }

    public IReadOnlyDictionary<string, Part> Parts => _parts;

    public IReadOnlyDictionary<string, OilingPoint> Points => _points;

    public IReadOnlyList<JobQuestion> Asks => _asks;

    public IReadOnlyDictionary<string, JobQuestion> Asked => _asked;

    public MapSize? Map { get; private set; }

    /// <summary>Brings along what a file taken in, and those that it takes in, describe.</summary>
    public void Along(FileItem.TakenIn item, ProcedureFile inner, IReadOnlyList<ProcedureFile> reached)
    {
        foreach (ProcedureFile from in reached)
        {
            foreach (Part part in from.Parts) Part(item, inner, part with { TakenFrom = from.File });
            foreach (OilingPoint point in from.Points) Point(item, inner, point with { TakenFrom = from.File });
            foreach (JobQuestion ask in from.Asks) Ask(item, inner, ask);
            Map ??= from.Map;
        }
    }

    private void Part(FileItem.TakenIn item, ProcedureFile inner, Part part)
    {
        if (_parts.TryAdd(part.Id.Value, part)) return;
        Part here = _parts[part.Id.Value];
        if (Same(here, part)) return;
        _found.Add(TakeInConflict.Of(_file.File, item.Procedure.At, "part", part.Id.Value, Name(here.TakenFrom), Name(inner.File)));
    }

    private void Point(FileItem.TakenIn item, ProcedureFile inner, OilingPoint point)
    {
        if (_points.TryAdd(point.Id.Value, point)) return;
        OilingPoint here = _points[point.Id.Value];
        if (Same(here, point)) return;
        _found.Add(TakeInConflict.Of(_file.File, item.Procedure.At, "oiling point", point.Id.Value, Name(here.TakenFrom), Name(inner.File)));
    }

    // The outer file may put the question in its own words; the answers must be the same.
    private void Ask(FileItem.TakenIn item, ProcedureFile inner, JobQuestion ask)
    {
        JobQuestion along = ask with { Fact = new(ask.Fact.Value, default) };
        if (_asked.TryAdd(ask.Fact.Value, along)) _asks.Add(along);
        else if (!_asked[ask.Fact.Value].Answers.SequenceEqual(ask.Answers))
            _found.Add(TakeInConflict.Of(_file.File, item.Procedure.At, "fact", ask.Fact.Value, Name(""), Name(inner.File)));
    }

    private string Name(string takenFrom) => Path.GetFileName(takenFrom.Length > 0 ? takenFrom : _file.File);

    private static bool Same(Part a, Part b) =>
        a.Name == b.Name && a.Compartment == b.Compartment && a.Kind == b.Kind && a.Seat?.Value == b.Seat?.Value && a.UnderPower == b.UnderPower
        && a.Jewels == b.Jewels && a.Count == b.Count && a.Stays == b.Stays && Same(a.Of, b.Of) && Same(a.SetWith, b.SetWith)
        && Same(a.Finished, b.Finished) && Same(a.Delicate, b.Delicate) && Same(a.Under, b.Under);

    private static bool Same(OilingPoint a, OilingPoint b) =>
        a.Name == b.Name && a.Role.Value == b.Role.Value && a.Amount == b.Amount && a.Why == b.Why && a.On == b.On
        && a.When?.Time == b.When?.Time && a.When?.Part.Value == b.When?.Part.Value;

    private static bool Same(IReadOnlyList<Placed<string>> a, IReadOnlyList<Placed<string>> b) => a.Select(x => x.Value).SequenceEqual(b.Select(x => x.Value));
}
