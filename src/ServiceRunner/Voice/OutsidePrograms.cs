namespace ServiceRunner.Voice;

/// <summary>Programs for the same thing. The next one is tried where one fails, from the one that worked last.</summary>
internal sealed class OutsidePrograms(IReadOnlyList<OutsideProgram> programs)
{
    private int _first;

    /// <summary>Those that are not given up.</summary>
    public IReadOnlyList<OutsideProgram> Left => [.. programs.Where(p => !p.GivenUp)];

    /// <summary>The one that does it; empty if none does.</summary>
    public string Name => Fails || Left.Count == 0 ? "" : programs[_first].Name;

    /// <summary>True while the last try failed with all of them.</summary>
    public bool Fails { get; private set; }

    /// <summary>Runs one after the other until one does it or is cut short.</summary>
    public ChildEnd Try(Func<OutsideProgram, ChildEnd> run)
    {
        for (int i = 0; i < programs.Count; i++)
        {
            int at = (_first + i) % programs.Count;
            OutsideProgram program = programs[at];
            if (program.GivenUp) continue;
            ChildEnd end = run(program);
            program.Ended(end);
            if (end == ChildEnd.Cut) return end;
            if (end != ChildEnd.Done) continue;
            (_first, Fails) = (at, false);
            return end;
        }
        return Failed();
    }

    /// <summary>It could not even be tried.</summary>
    public ChildEnd Failed()
    {
        Fails = true;
        return ChildEnd.Failed;
    }
}
