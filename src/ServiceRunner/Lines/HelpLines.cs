using ServiceRunner.Screens;

namespace ServiceRunner.Lines;

/// <summary>What can be done, as sentences, from the same list that the keys come from.</summary>
internal static class HelpLines
{
    /// <summary>Every action: what it does, and why it cannot be done now.</summary>
    public static IEnumerable<Telling> Of(IEnumerable<ScreenAction> actions) => actions.Select(a => (Telling)$"{Keys(a)}: {a.Help}{(a.WhyNot() is { Length: > 0 } why ? $" Not now: {why}" : "")}");

    /// <summary>What can be done now: key and name.</summary>
    public static IEnumerable<Telling> Now(IEnumerable<ScreenAction> actions)
    {
        foreach (ScreenAction action in actions.Where(a => a.WhyNot().Length == 0)) yield return $"{Keys(action)}: {Name(action)}";
        yield return "Always: a number chooses, more, where, clocks, why and an action, help and an action, quit";
    }

    /// <summary>What an action is called; where it has no name, what it does.</summary>
    public static string Name(ScreenAction action) => action.Name.Length > 0 ? action.Name : action.Help;

    /// <summary>The keys of an action, the shorter names first: they are typed.</summary>
    public static string Keys(ScreenAction action) => string.Join(" or ", action.Keys.OrderBy(k => k.Length));
}
