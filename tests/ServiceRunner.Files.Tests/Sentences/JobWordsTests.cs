using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Tests.Sentences;

public class JobWordsTests
{
    [Theory]
    [InlineData(Deviation.SoakLong, "1778 s against 360 s", "29:38 against 6:00")]
    [InlineData(Deviation.SoakShort, "120 s against 180 s", "2:00 against 3:00")]
    [InlineData(Deviation.SoakShort, "as the repairer told it", "as the repairer told it")]
    [InlineData(Deviation.ByOtherMeans, "5 s against 6 s", "5 s against 6 s")]
    public void Lengths_are_stored_in_seconds_and_shown_as_on_a_clock(string kind, string stored, string shown) =>
        Assert.Equal(shown, JobWords.DeviationDetail(new JobEvent.DeviationNoted(kind, null, stored, "")));

    [Fact]
    public void A_clock_past_its_longest_says_by_how_much() =>
        Assert.Equal("2:10 past its longest", JobWords.Of(Standing.Over, new Window(TimeSpan.FromMinutes(3), TimeSpan.FromMinutes(5), TimeSpan.FromMinutes(8)), new TimeSpan(0, 10, 10)));
}
