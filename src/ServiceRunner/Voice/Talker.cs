using System.Text;

namespace ServiceRunner.Voice;

/// <summary>
/// Speaks through a program of the machine. Text goes to its standard input, where it can be neither an option nor a
/// command; where a program takes none there, behind the mark that ends its options.
/// </summary>
internal sealed class Talker(IReadOnlyList<OutsideProgram> programs, int? wordsAMinute)
{
    /// <summary>Known speech programs.</summary>
    public static readonly IReadOnlyList<IReadOnlyList<string>> Known = [["espeak-ng"], ["spd-say"], ["say"]];

    private const int UsualSpeed = 175;
    private const string EndOfOptions = "--";

    private readonly OutsidePrograms _programs = new(programs);

    /// <summary>Those that are not given up.</summary>
    public IReadOnlyList<OutsideProgram> Programs => _programs.Left;

    /// <summary>What speaks, or empty.</summary>
    public string Name => _programs.Name;

    /// <summary>True while the last text could not be spoken.</summary>
    public bool Fails => _programs.Fails;

    /// <summary>Speaks words to their end.</summary>
    public ChildEnd Say(string words, Func<bool> cut) => _programs.Try(p => Say(p, words, cut));

    private ChildEnd Say(OutsideProgram program, string words, Func<bool> cut)
    {
        (string[] arguments, bool onInput) = Call(program, words);
        ChildEnd end = Child.Run(program.Path, arguments, onInput ? Encoding.UTF8.GetBytes(words + "\n") : [], Least(words), Bound(words), cut);
        // It hands the text to a service that goes on speaking when it is gone itself.
        if (end is ChildEnd.Cut or ChildEnd.Hung && program.Name == "spd-say") Child.Run(program.Path, ["--stop"], [], TimeSpan.Zero, TimeSpan.FromSeconds(1), () => false);
        return end;
    }

    /// <summary>The arguments for a text, and whether the text comes on standard input.</summary>
    internal (string[] Arguments, bool OnInput) Call(OutsideProgram program, string words)
    {
        IReadOnlyList<string> own = program.Arguments;
        return program.Name switch
        {
            "espeak-ng" or "espeak" => ([.. Speed("-s"), .. own, .. own.Contains("--stdin") ? [] : (string[])["--stdin"]], true),
            "say" => ([.. Speed("-r"), .. own, .. own.Contains("-f") ? [] : (string[])["-f", "-"]], true),
            "spd-say" => ([.. own, "--wait", EndOfOptions, words], false),
            _ => ([.. own], true),
        };
    }

    private string[] Speed(string option) => wordsAMinute is { } speed ? [option, speed.ToString(System.Globalization.CultureInfo.InvariantCulture)] : [];

    // Nobody understands more than a hundred letters in a second.
    private static TimeSpan Least(string words) => TimeSpan.FromMilliseconds(10 * words.Length);

    /// <summary>How long a text may take: three times what it takes at the usual speed, where a word has six letters, and a start.</summary>
    internal TimeSpan Bound(string words)
    {
        double aLetter = 3 * 60.0 / 6 / Math.Min(UsualSpeed, wordsAMinute ?? UsualSpeed);
        return TimeSpan.FromSeconds(4 + aLetter * words.Length);
    }
}
