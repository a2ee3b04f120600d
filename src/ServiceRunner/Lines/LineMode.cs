namespace ServiceRunner.Lines;

/// <summary>Whether the bench is told line by line.</summary>
/// <param name="IsOn">True if it is.</param>
/// <param name="Why">Why it was chosen without being asked for, as a sentence; empty if it was asked for.</param>
internal sealed record LineMode(bool IsOn, string Why)
{
    /// <summary>The mode for what was asked and for this terminal.</summary>
    public static LineMode Of(bool asked)
    {
        LineMode mode = Chosen(asked, Console.IsOutputRedirected, Environment.GetEnvironmentVariable("TERM"));
        // The runtime's console would switch a terminal that it knows into another mode, by writing to it.
        if (mode.IsOn) Environment.SetEnvironmentVariable("TERM", "dumb");
        return mode;
    }

    /// <summary>The mode for what was asked and what is known of a terminal.</summary>
    public static LineMode Chosen(bool asked, bool outputRedirected, string? term)
    {
        string why = asked ? ""
            : outputRedirected ? "Standard output is no terminal, so the bench is told line by line."
            : term == "dumb" ? "This terminal cannot move its cursor (TERM=dumb), so the bench is told line by line." : "";
        return new LineMode(asked || why.Length > 0, why);
    }
}
