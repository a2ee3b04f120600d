using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class YamlFeature
{
    public static readonly Rule Rule = new(
        "yaml-plain", Severity.Error, "YAML beyond the plain part of it",
        "Anchors, aliases, tags, several documents in one file and keys that are lists make a file hard to read for a " +
        "person. Write the value again where it is needed, or give parts a group.");

    public static Diagnostic Anchor(string file, Place at) =>
        Rule.At(file, at, "anchors (&) are not used here", "Write the value where it is needed; a text that begins with & wants quotation marks.");

    public static Diagnostic Alias(string file, Place at) =>
        Rule.At(file, at, "references (*) are not used here", "Write the value again; a text that begins with * wants quotation marks.");

    public static Diagnostic Tag(string file, Place at) =>
        Rule.At(file, at, "tags (!) are not used here", "Leave the tag out; a text that begins with ! wants quotation marks.");

    public static Diagnostic SecondDocument(string file, Place at) =>
        Rule.At(file, at, "a second document begins here", "One file holds one document: put this into a file of its own.");

    public static Diagnostic KeyNotText(string file, Place at) => Rule.At(file, at, "a key is a plain word", "");
}
