namespace ServiceRunner;

/// <summary>What the program's exit code says. docs/verbs.md lists them.</summary>
internal static class ExitCodes
{
    /// <summary>Done; for <c>check</c>: no errors.</summary>
    public const int Done = 0;

    /// <summary><c>check</c> found errors; <c>audit</c> found damage.</summary>
    public const int Found = 1;

    /// <summary>The verb or an option was not understood.</summary>
    public const int Usage = 2;

    /// <summary>There is no such job, procedure or file.</summary>
    public const int NotThere = 3;

    /// <summary>The data folder cannot be used: missing, read-only, full, not one of ours.</summary>
    public const int Folder = 4;

    /// <summary>The data folder is in use by another run.</summary>
    public const int InUse = 5;

    /// <summary>The data is damaged.</summary>
    public const int Damaged = 6;

    /// <summary>No bench is open that a pedal could reach.</summary>
    public const int NoBench = 7;

    /// <summary>There is no terminal to show a screen on.</summary>
    public const int NoTerminal = 69;

    /// <summary>A fault that nobody foresaw.</summary>
    public const int Unforeseen = 70;
}
