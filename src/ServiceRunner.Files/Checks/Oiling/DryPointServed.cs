using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Oiling;

internal static class DryPointServed
{
    public static readonly Rule Rule = new(
        "dry-point-served", Severity.Error, "Oil where none may be",
        "The point's role is 'never': it must stay dry.");

    public static Diagnostic Of(string file, Place at, string point, string why) =>
        Rule.At(file, at, $"'{point}' must stay dry and is served here", why.Length > 0 ? $"The reason given: {why.TrimEnd('.')}." : "");
}
