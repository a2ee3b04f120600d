namespace ServiceRunner.Screens;

/// <summary>
/// Something that can be done on a screen. The keys, the footer, the help page and docs/keys.md all come from these
/// lists, so that none of them can promise what another refuses.
/// </summary>
/// <param name="Keys">Names of the keys, the first one shown.</param>
/// <param name="Name">What it does, in a few words.</param>
/// <param name="Help">What it does, in a sentence.</param>
/// <param name="WhyNot">Why it cannot be done now, as a sentence; empty if it can.</param>
/// <param name="Do">Does it.</param>
/// <param name="Weight">Lower comes first in the footer; 100 and more is not in the footer at all.</param>
public sealed record ScreenAction(IReadOnlyList<string> Keys, string Name, string Help, Func<string> WhyNot, Action Do, int Weight = 50)
{
    /// <summary>An action that can always be done.</summary>
    public static ScreenAction Always(string key, string name, string help, Action act, int weight = 50) => new([key], name, help, () => "", act, weight);
}
