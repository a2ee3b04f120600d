using CsCheck;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Tests.Yaml;

public class DurationTextTests
{
    [Theory]
    [InlineData("45 s", 45)]
    [InlineData("8 min", 480)]
    [InlineData("1 h 30 min", 5400)]
    [InlineData("1h30min", 5400)]
    [InlineData("1.5 h", 5400)]
    [InlineData("1,5 h", 5400)]
    [InlineData("24 h", 86400)]
    [InlineData("2 d", 172800)]
    [InlineData(" 2 d 1 h ", 176400)]
    public void Is_read(string text, int seconds)
    {
        Assert.True(DurationText.TryRead(text, out TimeSpan length));
        Assert.Equal(TimeSpan.FromSeconds(seconds), length);
    }

    [Theory]
    [InlineData("")]
    [InlineData("5")]
    [InlineData("5 minutes")]
    [InlineData("min")]
    [InlineData("0 s")]
    [InlineData("-5 s")]
    [InlineData("30 min 1 h")]
    [InlineData("1 h 1 h")]
    [InlineData("1,234 s")]
    [InlineData("999999999 d")]
    [InlineData("1..5 h")]
    public void Is_refused(string text) => Assert.False(DurationText.TryRead(text, out _));

    [Fact]
    public void What_is_written_is_read_again() =>
        Gen.Int[1, 3650 * 86400].Sample(seconds =>
        {
            TimeSpan length = TimeSpan.FromSeconds(seconds);
            return DurationText.TryRead(DurationText.Write(length), out TimeSpan read) && read == length;
        });
}
