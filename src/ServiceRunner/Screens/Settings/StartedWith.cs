namespace ServiceRunner.Screens.Settings;

/// <summary>What the program was started with, as far as it is a setting.</summary>
public sealed record StartedWith
{
    /// <summary>Where the data folder's name comes from.</summary>
    public string FolderFrom { get; init; } = "built in";

    /// <summary>True with <c>--monochrome</c>.</summary>
    public bool Monochrome { get; init; }

    /// <summary>True if the variable NO_COLOR is set.</summary>
    public bool NoColour { get; init; }

    /// <summary>True if the variable COLORTERM promises colours of 24 bits.</summary>
    public bool AllColours { get; init; }

    /// <summary>True with <c>--diagnose</c>.</summary>
    public bool Diagnose { get; init; }

    /// <summary>Where the diagnostic log is written; empty if it is not.</summary>
    public Func<string> DiagnosticLog { get; init; } = () => "";

    /// <summary>The program that plays tones; empty if there is none.</summary>
    public Func<string> Player { get; init; } = () => "";

    /// <summary>The program that speaks; empty if there is none.</summary>
    public Func<string> Talker { get; init; } = () => "";

    /// <summary>Bytes that are left on the disk; null where nobody knows.</summary>
    public Func<long?> DiskLeft { get; init; } = () => null;
}
