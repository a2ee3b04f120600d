using System.Text;
using CsCheck;
using ServiceRunner.Screens;
using ServiceRunner.Screens.Large;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens.Large;

/// <summary>Letters that are read from two metres.</summary>
public class LargeLettersTests
{
    private static readonly string[] Oddities = ["a", "Ä", "e\u0301", "\ud83d\ude00", "\ud83d", "\u0301", "\u202e", "\t", "\n", " ", "½", "→", "\0", "æ", "界"];

    private static readonly Gen<string> AnyText = Gen.OneOf(Gen.String, Gen.Char.Array[0, 40].Select(c => new string(c)),
        Gen.Int[0, Oddities.Length - 1].Select(i => Oddities[i]).Array[0, 30].Select(parts => string.Concat(parts)));

    [Fact]
    public void The_whole_font()
    {
        StringBuilder picture = new();
        foreach (string row in new[] { "ABCDEFGHI", "JKLMNOPQR", "STUVWXYZ", "abcdefghijklm", "nopqrstuvwxyz", "0123456789", ".,:;'\"-–()[]/?!", "+=±×%°½&→▲<>*…µ", "ßıæœ" }.Concat(Accents.Letters.Chunk(12).Select(c => new string(c))))
            picture.Append(row).Append('\n').AppendJoin('\n', LargeLetters.RowsOf(row, LetterSize.Single)).Append('\n');
        picture.Append("Double\n").AppendJoin('\n', LargeLetters.RowsOf("Oil it", LetterSize.Double));
        Snapshot.Verify(picture.ToString());
    }

    [Fact]
    public void Every_letter_has_eight_rows_of_one_width_from_one_to_six()
    {
        foreach (char letter in LargeLetters.Drawn.Concat(Accents.Letters))
        {
            string[] shape = LargeLetters.Of(letter.ToString())[0].Shape;
            Assert.Equal(LargeLetters.Pixels, shape.Length);
            Assert.InRange(shape[0].Length, 1, 6);
            Assert.All(shape, row => Assert.Equal(shape[0].Length, row.Length));
            Assert.All(shape, row => Assert.All(row, p => Assert.True(p is '#' or '.', $"'{letter}' has a '{p}'")));
        }
    }

    [Fact]
    public void No_two_letters_look_the_same()
    {
        IEnumerable<IGrouping<string, char>> alike = LargeLetters.Drawn.GroupBy(c => string.Join('\n', LargeLetters.Of(c.ToString())[0].Shape)).Where(g => g.Count() > 1);
        Assert.Empty(alike.Select(g => string.Concat(g)));
    }

    [Theory]
    [InlineData("ABCDEFGHIJKLMNOPRSTUVWXYZ0123456789", 0, 6)]
    [InlineData("aceimnorsuvwxz", 2, 6)]
    [InlineData("bdfhkl", 0, 6)]
    [InlineData("gpqy", 2, 7)]
    public void Letters_stand_on_one_line_and_reach_one_height(string letters, int first, int last)
    {
        foreach (char letter in letters)
        {
            string[] shape = LargeLetters.Of(letter == 'i' ? "ı" : letter.ToString())[0].Shape;
            Assert.Equal((letter, first, last), (letter, Array.FindIndex(shape, r => r.Contains('#', StringComparison.Ordinal)), Array.FindLastIndex(shape, r => r.Contains('#', StringComparison.Ordinal))));
        }
    }

    [Fact]
    public void Every_plain_letter_figure_and_mark_of_a_procedure_has_its_shape()
    {
        string box = string.Join('\n', LargeLetters.RowsOf("\u4e00", LetterSize.Single));
        foreach (char c in "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,:;'\"-–()/½%°+=?!&×→ ")
            Assert.NotEqual(box, string.Join('\n', LargeLetters.RowsOf(c.ToString(), LetterSize.Single)));
    }

    [Theory]
    [InlineData("é", "e\u0301")]
    [InlineData("í", "i\u0301")]
    [InlineData("Ö", "O\u0308")]
    [InlineData("č", "c")]
    [InlineData("ø", "o")]
    [InlineData("ĺ", "l")]
    [InlineData("æ", "ae")]
    [InlineData("it’s", "it's")]
    public void A_mark_is_composed_or_left_off(string text, string same) =>
        Assert.Equal(LargeLetters.RowsOf(same, LetterSize.Single), LargeLetters.RowsOf(text, LetterSize.Single));

    [Theory]
    [InlineData("é", "e")]
    [InlineData("Ä", "A")]
    [InlineData("ï", "i")]
    [InlineData("ç", "c")]
    public void A_mark_that_has_room_is_seen(string text, string bare) =>
        Assert.NotEqual(LargeLetters.RowsOf(bare, LetterSize.Single), LargeLetters.RowsOf(text, LetterSize.Single));

    [Fact]
    public void A_line_never_exceeds_its_columns_and_loses_nothing() => Gen.Select(AnyText, Gen.Int[12, 200], Gen.Bool).Sample((text, columns, isDouble) =>
    {
        LetterSize size = isDouble ? LetterSize.Double : LetterSize.Single;
        IReadOnlyList<string> lines = LargeLetters.Wrap(text, columns, size);
        // Only a letter that is drawn as two cannot be broken further.
        Assert.All(lines, line => Assert.True(LargeLetters.Width(line, size) <= columns || LargeLetters.Of(line).Select(s => s.Start).Distinct().Count() == 1, $"'{line}' is wider than {columns}"));
        Assert.Equal(string.Concat(text.Split([' ', '\n', '\r', '\t'])), string.Concat(lines).Replace(" ", "", StringComparison.Ordinal));
    });

    [Fact]
    public void Any_text_is_drawn_as_wide_as_it_says() => AnyText.Sample(text =>
    {
        foreach (LetterSize size in Enum.GetValues<LetterSize>())
        {
            IReadOnlyList<string> rows = LargeLetters.RowsOf(text, size);
            Assert.Equal(LargeLetters.Rows(size), rows.Count);
            Assert.All(rows, row => Assert.Equal(LargeLetters.Width(text, size), row.Length));
            LargeLetters.Draw(new Sheet(20, 5), -3, 2, text, size, Ink.Strong);
        }
    });
}
