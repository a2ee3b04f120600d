using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks;

/// <summary>How much a diagnostic weighs.</summary>
public enum Severity
{
    /// <summary>The file cannot be used until it is put right.</summary>
    Error,

    /// <summary>A careful colleague would ask about it; the file can be used.</summary>
    Warning,

    /// <summary>Worth knowing.</summary>
    Note,
}

/// <summary>What a check has to say about a place in a file, as data. How it looks is decided by whoever shows it.</summary>
/// <param name="Code">The code of its <see cref="Rule"/>.</param>
/// <param name="Severity">Its weight.</param>
/// <param name="File">The file as it was named to the check.</param>
/// <param name="Place">Line and column; the default means the file as a whole.</param>
/// <param name="Message">One sentence without a full stop: what is the matter.</param>
/// <param name="Hint">What to do about it; empty if the message says it already.</param>
public sealed record Diagnostic(string Code, Severity Severity, string File, Place Place, string Message, string Hint);
