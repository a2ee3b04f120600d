using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Checks.Reading;
using ServiceRunner.Files.Checks.References;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Procedures;

/// <summary>Puts a procedure together from its file and those it takes in, and puts parts in the place of groups.</summary>
internal sealed class Assembly(ProcedureLibrary library, List<LoadedFile> used)
{
    // Files that take each other in doubled would otherwise grow without end.
    private const int MostTakenIn = 100;

    private readonly Allowance _allowance = new();
    private readonly List<string> _chain = [];
    private int _takenIn;

    public Procedure Whole(ProcedureFile file, List<Diagnostic> found)
    {
        // Read alone, a group that somebody else should give stands for one part of its own name.
        List<Placed<string>> wanted = [.. file.WantsGroups.DistinctBy(g => g.Value)];
        Dictionary<string, IReadOnlyList<string>> given = wanted.ToDictionary(g => g.Value, g => (IReadOnlyList<string>)[g.Value]);
        IEnumerable<Part> standIns = wanted.Select(g => new Part { Id = g, Name = AskWords.Spoken(g.Value, false), Stays = true });
        Read read = Take(file, given, found);
        if (_allowance.Spent) found.Add(TooMuch.Grown(file.File, file.Id.At, Allowance.Most));
        return new Procedure
        {
            Id = file.Id, Title = file.Title, Revision = file.Revision, Covers = file.Covers, Sources = file.Sources,
            Asks = read.Asks, Parts = [.. standIns, .. read.Parts.Values], Groups = read.Groups, WantsGroups = file.WantsGroups, Mends = file.Mends, Sheet = file.Sheet,
            OilingPoints = [.. read.Points.Values], Map = read.Map, Stages = read.Stages,
        };
    }

    // A file with all that it takes in.
    private sealed record Read(
        IReadOnlyDictionary<string, Part> Parts, IReadOnlyList<PartGroup> Groups, IReadOnlyDictionary<string, OilingPoint> Points,
        IReadOnlyList<JobQuestion> Asks, MapSize? Map, IReadOnlyList<Stage> Stages);

    private Read Take(ProcedureFile file, IReadOnlyDictionary<string, IReadOnlyList<string>> given, List<Diagnostic> found)
    {
        _chain.Add(file.Id.Value ?? "");
        Belongings belongings = new(file, found);
        List<(FileItem.TakenIn Item, ProcedureFile File)> inner = Inner(file, found);
        foreach ((FileItem.TakenIn item, ProcedureFile from) in inner) belongings.Along(item, from, Reach(from));
        Mentions mentions = new(file, belongings, given, _allowance, found);
        List<PartGroup> groups = mentions.DefineGroups();
        mentions.CheckParts();
        Dictionary<FileItem.TakenIn, List<Step>> takenSteps = new(ReferenceEqualityComparer.Instance);
        foreach ((FileItem.TakenIn item, ProcedureFile from) in inner)
            takenSteps[item] = Steps(file, item, from, mentions, found);
        List<Stage> stages = [];
        foreach (FileStage stage in file.Stages)
        {
            List<Step> steps = [];
            foreach (FileItem item in stage.Items)
            {
                if (item is FileItem.Written written) steps.Add(mentions.Expand(written.Step));
                else if (takenSteps.TryGetValue((FileItem.TakenIn)item, out List<Step>? taken)) steps.AddRange(taken);
            }
            stages.Add(new Stage(stage.Id, stage.Title, stage.OpensAfter, steps));
        }
        _chain.RemoveAt(_chain.Count - 1);
        if (inner.Count > 0) TakeInReferences.Check(file.File, inner.Select(i => i.Item), stages, belongings.Asked, found);
        return new Read(belongings.Parts, groups, belongings.Points, belongings.Asks, file.Map ?? belongings.Map, stages);
    }

    // The files taken in that can be: found, not in a circle, each under a name of its own.
    private List<(FileItem.TakenIn Item, ProcedureFile File)> Inner(ProcedureFile file, List<Diagnostic> found)
    {
        List<(FileItem.TakenIn, ProcedureFile)> inner = [];
        HashSet<string> aliases = new(StringComparer.Ordinal);
        foreach (FileItem.TakenIn item in file.Stages.SelectMany(s => s.Items).OfType<FileItem.TakenIn>())
        {
            string id = item.Procedure.Value;
            int begin = _chain.IndexOf(id);
            if (begin >= 0) found.Add(TakeInCircle.Of(file.File, item.Procedure.At, [.. _chain.Skip(begin), id]));
            else if (!aliases.Add(item.Alias.Value)) found.Add(TakeInConflict.Alias(file.File, item.Alias.At, item.Alias.Value));
            else if (++_takenIn > MostTakenIn) found.Add(TooMuch.TakenIn(file.File, item.Procedure.At, MostTakenIn));
            else if (library.Find(id) is not { } loaded) found.Add(TakeInUnknown.Of(file.File, item.Procedure.At, id, library.Ids));
            else if (loaded.Procedure is { } procedure) inner.Add((item, Used(loaded, procedure)));
            else found.Add(Faulty(file, item, [.. loaded.Found]));
        }
        return inner;
    }

    private ProcedureFile Used(LoadedFile loaded, ProcedureFile procedure)
    {
        if (!used.Contains(loaded)) used.Add(loaded);
        return procedure;
    }

    // A file and all that it takes in, each once, for what they bring along.
    private List<ProcedureFile> Reach(ProcedureFile file)
    {
        List<ProcedureFile> reached = [file];
        for (int i = 0; i < reached.Count; i++)
        {
            foreach (FileItem.TakenIn item in reached[i].Stages.SelectMany(s => s.Items).OfType<FileItem.TakenIn>())
            {
                if (library.Find(item.Procedure.Value)?.Procedure is { } next && !reached.Contains(next)) reached.Add(next);
            }
        }
        return reached;
    }

    private List<Step> Steps(ProcedureFile outer, FileItem.TakenIn item, ProcedureFile file, Mentions mentions, List<Diagnostic> found)
    {
        List<Diagnostic> inside = [.. library.Find(item.Procedure.Value)!.Found];
        Read read = Take(file, Given(outer, item, file, mentions, found), inside);
        if (inside.Any(d => d.Severity == Severity.Error)) found.Add(Faulty(outer, item, inside));
        return Prefixed.Steps(read.Stages, item, file, _allowance);
    }

    private static Dictionary<string, IReadOnlyList<string>> Given(
        ProcedureFile outer, FileItem.TakenIn item, ProcedureFile file, Mentions mentions, List<Diagnostic> found)
    {
        Dictionary<string, IReadOnlyList<string>> given = new(StringComparer.Ordinal);
        List<string> wanted = [.. file.WantsGroups.Select(g => g.Value)];
        foreach (PartGroup group in item.With)
        {
            if (wanted.Contains(group.Name.Value)) given[group.Name.Value] = [.. mentions.Expand(group.Parts).Select(p => p.Value)];
            else found.Add(TakeInGroups.NotWanted(outer.File, group.Name.At, item.Procedure.Value, group.Name.Value, wanted));
        }
        foreach (string group in wanted.Where(w => !given.ContainsKey(w)).Distinct().ToList())
        {
            found.Add(TakeInGroups.NotGiven(outer.File, item.Procedure.At, item.Procedure.Value, group));
            given[group] = [];
        }
        return given;
    }

    private static Diagnostic Faulty(ProcedureFile outer, FileItem.TakenIn item, List<Diagnostic> inside)
    {
        List<Diagnostic> errors = [.. inside.Where(d => d.Severity == Severity.Error).OrderBy(d => d.Place.Line)];
        return TakeInFaulty.Of(outer.File, item.Procedure.At, item.Procedure.Value, errors.Count, errors[0]);
    }
}
