namespace ServiceRunner.Voice;

/// <summary>Plays tones through a program of the machine. The next one is tried where one fails, from the one that worked last.</summary>
internal sealed class Player(IReadOnlyList<OutsideProgram> programs, SoundFiles files)
{
    /// <summary>Known players with the arguments that keep them from drawing and asking; the file is put behind them.</summary>
    public static readonly IReadOnlyList<IReadOnlyList<string>> Known =
        [["pw-play"], ["paplay"], ["aplay", "-q"], ["ffplay", "-nodisp", "-autoexit", "-loglevel", "quiet"], ["afplay"], ["play", "-q"]];

    // How much longer than the tone a player may take: a sound server may have to wake up.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    private int _first;

    /// <summary>Those that are not given up.</summary>
    public IReadOnlyList<OutsideProgram> Programs => [.. programs.Where(p => !p.GivenUp)];

    /// <summary>What plays, or empty.</summary>
    public string Name => Fails || Programs.Count == 0 ? "" : programs[_first].Name;

    /// <summary>True while the last tone could not be played.</summary>
    public bool Fails { get; private set; }

    /// <summary>Plays a tone to its end.</summary>
    public ChildEnd Play(Tone tone, Func<bool> cut)
    {
        string file;
        try
        {
            file = files.Of(tone);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Fails = true;
            return ChildEnd.Failed;
        }
        for (int i = 0; i < programs.Count; i++)
        {
            int at = (_first + i) % programs.Count;
            OutsideProgram program = programs[at];
            if (program.GivenUp) continue;
            ChildEnd end = Child.Run(program.Path, [.. program.Arguments, file], [], tone.Length / 2, tone.Length + Patience, cut);
            program.Ended(end);
            if (end == ChildEnd.Cut) return end;
            if (end != ChildEnd.Done) continue;
            (_first, Fails) = (at, false);
            return end;
        }
        Fails = true;
        return ChildEnd.Failed;
    }
}
