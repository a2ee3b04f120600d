namespace ServiceRunner.Terminal;

/// <summary>How the screen is to be shown.</summary>
public sealed record TerminalOptions
{
    /// <summary>Weight, underline and reverse instead of colour. NO_COLOR in the environment asks for the same.</summary>
    public bool Monochrome { get; init; }

    /// <summary>Told an error that nobody foresaw, on whichever thread it befell.</summary>
    public Action<Exception>? Failed { get; init; }

    /// <summary>Drives the timers. Its timestamps run on when the wall clock is set.</summary>
    public TimeProvider Time { get; init; } = TimeProvider.System;
}
