using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Parts;

internal static class UnderOrder
{
    public static readonly Rule Rule = new(
        "under-order", Severity.Error, "A part taken off from under another",
        "What covers or holds a part comes off before it. In the order of the list it does not.");

    public static Diagnostic Of(string file, Place at, string part, string over, string when) =>
        Rule.At(file, at, $"'{part}' is taken off while '{over}', which covers or holds it, is still on{when}", "Take the upper part off first.");
}
