using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks;

/// <summary>One thing that is checked. Each has a file of its own with its sentences; docs/diagnostics.md is made from them.</summary>
/// <param name="Code">Its code, in words; it never changes its meaning.</param>
/// <param name="Severity">Its weight.</param>
/// <param name="Title">What is the matter, in a few words.</param>
/// <param name="Explanation">A paragraph: why it matters and what to do.</param>
public sealed record Rule(string Code, Severity Severity, string Title, string Explanation)
{
    internal Diagnostic At(string file, Place place, string message, string hint = "") => new(Code, Severity, file, place, message, hint);
}
