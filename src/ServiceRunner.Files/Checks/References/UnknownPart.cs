using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.References;

internal static class UnknownPart
{
    public static readonly Rule Rule = new(
        "unknown-part", Severity.Error, "A part that is not described",
        "A part, or a group of them, is mentioned that stands neither under 'parts' nor under 'groups'. A group may name " +
        "only groups that stand before it.");

    public static Diagnostic Of(string file, Place at, string name, IEnumerable<string> known) =>
        Rule.At(file, at, $"there is no part or group {Words.Quoted(name)}", Words.DidYouMean(name, known));

    public static Diagnostic Head(string file, Place at, string key, string name, IEnumerable<string> known) =>
        Rule.At(file, at, $"'{key}' names {Words.Quoted(name)}, which is no part of this procedure", Words.DidYouMean(name, known));
}
