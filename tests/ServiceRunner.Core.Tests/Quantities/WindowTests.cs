using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Tests.Quantities;

public class WindowTests
{
    [Theory]
    [InlineData(179, Standing.Under)]
    [InlineData(180, Standing.Within)]
    [InlineData(299, Standing.Within)]
    [InlineData(300, Standing.AtAim)]
    [InlineData(480, Standing.AtAim)]
    [InlineData(481, Standing.Over)]
    public void The_limits_belong_to_the_window(double seconds, Standing standing) =>
        Assert.Equal(standing, Jobs.Sample.Minutes(3, 5, 8).Of(TimeSpan.FromSeconds(seconds)));

    [Fact]
    public void Without_a_most_longer_does_no_harm() =>
        Assert.Equal(Standing.AtAim, new Window(TimeSpan.Zero, TimeSpan.FromMinutes(1), null).Of(TimeSpan.FromDays(9)));
}
