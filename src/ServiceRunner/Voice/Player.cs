namespace ServiceRunner.Voice;

/// <summary>Plays tones through a program of the machine. The next one is tried where one fails, from the one that worked last.</summary>
internal sealed class Player(IReadOnlyList<OutsideProgram> programs, SoundFiles files)
{
    /// <summary>Known players with the arguments that keep them from drawing and asking; the file is put behind them.</summary>
    public static readonly IReadOnlyList<IReadOnlyList<string>> Known =
        [["pw-play"], ["paplay"], ["aplay", "-q"], ["ffplay", "-nodisp", "-autoexit", "-loglevel", "quiet"], ["afplay"], ["play", "-q"]];

    // How much longer than the tone a player may take: a sound server may have to wake up.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    private readonly OutsidePrograms _programs = new(programs);

    /// <summary>Those that are not given up.</summary>
    public IReadOnlyList<OutsideProgram> Programs => _programs.Left;

    /// <summary>What plays, or empty.</summary>
    public string Name => _programs.Name;

    /// <summary>True while the last tone could not be played.</summary>
    public bool Fails => _programs.Fails;

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
            return _programs.Failed();
        }
        return _programs.Try(p => Child.Run(p.Path, [.. p.Arguments, file], [], tone.Length / 2, tone.Length + Patience, cut));
    }
}
