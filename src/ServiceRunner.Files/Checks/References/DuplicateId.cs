using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.References;

internal static class DuplicateId
{
    public static readonly Rule Rule = new(
        "duplicate-id", Severity.Error, "The same id twice",
        "Ids are how a step, a part or a point is meant elsewhere in the file and in the job's log, so that each stands " +
        "once.");

    public static Diagnostic Of(string file, Place at, string thing, string id, Place first) =>
        Rule.At(file, at, $"the {thing} '{id}' stands here a second time; the first is in line {first.Line}", "Give one of them another id.");

    public static Diagnostic GroupAndPart(string file, Place at, string id) =>
        Rule.At(file, at, $"'{id}' is the name of a group and of a part", "Give the group another name.");
}
