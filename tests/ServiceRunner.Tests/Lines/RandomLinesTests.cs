using System.Globalization;
using System.Text;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Screens.Run;
using ServiceRunner.Core.Jobs;

namespace ServiceRunner.Tests.Lines;

/// <summary>Random entries, answers, waits and restarts: whatever is said is printable text on one line, and nothing else.</summary>
public class RandomLinesTests
{
    private static readonly string[] Entries =
    [
        "", "", "", "", "", "go on", "1", "1", "1", "2", "3", "12", "u", "s", "e", "+", "a", "l", "v", "b", "o", "f", "p", "h", "g", "r", "m", "k", "d", "esc", "F1", "F2", "F4", "F6", "F8",
        "space", "j", "n", "i", "/", "down", "?", "more", "where", "clocks", "why end the clock", "help u", "back", ".", "answer", "baths", "sign in", "first", "e\u0301", "\e[31mred", "\u202Eabc", "日本 ½ → ▲ ━", "quit now", "why \a",
    ];

    private static readonly string[] Answers = ["", ".", "yes", "0,04", "6", "+4 285", "IV", "TB", "8:30", "2 min", "as seen", "\e[2J\u0007\b", "日本\u200B", new string('x', 300), "Q26-00", "two\rlines\u2028here", "\uD83D\uDD27 \uD800"];

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Every_byte_is_printable_text_or_the_end_of_a_line(int seed)
    {
        Random random = new(seed);
        using PaperLines lines = new(inMemory: true);
        lines.Bench.WithJob("Q26-001").Keys("F2");
        lines.Bench.WithJob("Q26-002", "jewel-replacement").Keys("F2");
        lines.Greet();
        HashSet<string> screens = [];
        for (int i = 0; i < 1500; i++)
        {
            string entry = lines.Shell.Open is not null ? Answers[random.Next(Answers.Length)]
                : lines.Shell.Screen is PickModel && random.Next(3) == 0 ? "1"
                : lines.Shell.Screen is RunModel { Offer: Offer.Restart } && random.Next(2) == 0 ? "h"
                : Entries[random.Next(Entries.Length)];
            if (random.Next(5) == 0) lines.SayAtOnce(entry);
            else lines.Say(entry);
            Assert.True(lines.Last.Count > 0, $"silence after '{entry}' on {lines.Shell.Screen.Name}");
            if (random.Next(10) == 0) lines.Wait(TimeSpan.FromSeconds(random.Next(200)));
            if (i % 300 == 299) lines.Restart().Greet();
            if (i % 20 == 0 && lines.Shell.Open is null) lines.Say("bench", "1");
            screens.Add(lines.Shell.Screen.GetType().Name);
        }
        foreach (string line in Written(lines.Picture).Where(l => !l.StartsWith('>')))
        {
            Assert.True(line.Length > 0, "an empty line");
            foreach (Rune rune in line.EnumerateRunes()) Assert.True(IsPrintable(rune), $"U+{rune.Value:X4} in: {line}");
        }
        Assert.True(screens.Count >= 4, string.Join(", ", screens));
        Assert.True(lines.Bench.Session.Head.Sequence > 60, $"only {lines.Bench.Session.Head.Sequence} lines: the entries did not get far");
    }

    // An entry with an end of a line within stands in the picture over several.
    private static IEnumerable<string> Written(string picture) => Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(picture)).TrimEnd('\n').Split('\n');

    private static bool IsPrintable(Rune rune) => rune.Value is not (>= 0x2500 and <= 0x25FF) && rune != Rune.ReplacementChar
        && Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
            or UnicodeCategory.Surrogate or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned);
}
