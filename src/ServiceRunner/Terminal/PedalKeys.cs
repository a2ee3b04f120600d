using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;

namespace ServiceRunner.Terminal;

/// <summary>
/// Foot pedals send F13 and above, in the form ESC [ n ~. The library (2.5.0) throws on every n that it has no name for,
/// which ends the program. This pattern stands before its own, names the keys that exist and swallows the others.
/// </summary>
internal static partial class PedalKeys
{
    public static void Teach(IApplication app)
    {
        if (app.Driver?.GetInputProcessor().GetParser() is { } parser) Patterns(Keyboard(parser)).Insert(0, new Tilde());
    }

    [UnsafeAccessor(UnsafeAccessorKind.Field, Name = "_keyboardParser")]
    private static extern ref AnsiKeyboardParser Keyboard([UnsafeAccessorType("Terminal.Gui.Drivers.AnsiResponseParserBase, Terminal.Gui")] object parser);

    [UnsafeAccessor(UnsafeAccessorKind.Field, Name = "_patterns")]
    private static extern ref List<AnsiKeyboardParserPattern> Patterns(AnsiKeyboardParser parser);

    private sealed partial class Tilde : AnsiKeyboardParserPattern
    {
        private static readonly HashSet<int> NamedByTheLibrary = [1, 2, 3, 4, 5, 6, 11, 12, 13, 14, 15, 17, 18, 19, 20, 21, 23, 24];

        private static readonly Dictionary<int, KeyCode> Named = new()
        {
            [7] = KeyCode.Home, [8] = KeyCode.End,
            [25] = KeyCode.F13, [26] = KeyCode.F14, [28] = KeyCode.F15, [29] = KeyCode.F16,
            [31] = KeyCode.F17, [32] = KeyCode.F18, [33] = KeyCode.F19, [34] = KeyCode.F20,
        };

        [GeneratedRegex(@"^\e\[(\d+)(?:;([\d:;]+))?~$")]
        private static partial Regex Form();

        // 200 and 201 bracket a paste: the parser asks for those before it asks for keys.
        public override bool IsMatch(string? input) =>
            input is not null && Form().Match(input) is { Success: true } m && !(Number(m) is { } n && NamedByTheLibrary.Contains(n));

        protected override Key? GetKeyImpl(string? input)
        {
            Match m = Form().Match(input!);
            if (Number(m) is not { } n || !Named.TryGetValue(n, out KeyCode code)) return Key.Empty;
            return m.Groups[2].Success ? ApplyModifiersAndEventType(m.Groups[2].Value, new Key(code)) : new Key(code);
        }

        private static int? Number(Match m) => int.TryParse(m.Groups[1].Value, out int n) ? n : null;
    }
}
