using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Oiling;

internal static class PointOrder
{
    public static readonly Rule Rule = new(
        "point-order", Severity.Error, "An oiling point served at the wrong time",
        "Some places cannot be reached once a part is in; others are served only when the part has been fitted and tried. " +
        "The point's 'when' and the order of the steps say different things.");

    public static Diagnostic TooLate(string file, Place at, string point, string part, string fittedIn, string when) =>
        Rule.At(file, at, $"'{point}' is to be served before '{part}' is fitted, which happens earlier, in '{fittedIn}'{when}");

    public static Diagnostic TooEarly(string file, Place at, string point, string part, string fittedIn, string when) =>
        Rule.At(file, at, $"'{point}' is to be served after '{part}' is fitted, which happens only later, in '{fittedIn}'{when}");

    public static Diagnostic Apart(string file, Place at, string point, string part, string fittedIn, string when) =>
        Rule.At(file, at, $"'{point}' is to be served while '{part}' is fitted, which happens in another stage, in '{fittedIn}'{when}");
}
