using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Tests.Sentences;

public class PlainTextTests
{
    [Theory]
    [InlineData("Wrist watch, engraved \"für M.\", 17½ lines", "Wrist watch, engraved \"für M.\", 17½ lines")]
    [InlineData("a\u001b[2Jb", "a·[2Jb")]
    [InlineData("bell\u0007", "bell·")]
    [InlineData("two\r\nlines", "two··lines")]
    [InlineData("dial\u202etaht", "dial·taht")]
    [InlineData("\u2066inside\u2069", "·inside·")]
    [InlineData("no\u200bgap\u2028", "no·gap·")]
    [InlineData("tag\U000E0041", "tag·")]
    [InlineData("ひげぜんまい 🕰", "ひげぜんまい 🕰")]
    public void No_character_moves_anything(string typed, string shown) => Assert.Equal(shown, PlainText.Of(typed));

    // An attribute cannot hold half a character.
    [Fact]
    public void Half_a_character_is_shown_as_none() => Assert.Equal("half \ufffd", PlainText.Of("half " + (char)0xd800));
}
