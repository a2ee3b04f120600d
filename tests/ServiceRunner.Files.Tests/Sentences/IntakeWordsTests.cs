using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Tests.Sentences;

public class IntakeWordsTests
{
    private static readonly DateOnly Today = new(2026, 3, 2);

    [Theory]
    [InlineData("2026-03-20", "2026-03-20")]
    [InlineData(" 20  Mar ", "2026-03-20")]
    [InlineData("20 march", "2026-03-20")]
    [InlineData("1 Mar", "2027-03-01")]
    [InlineData("2 Mar", "2026-03-02")]
    [InlineData("29 Feb", "2028-02-29")]
    [InlineData("20 Mar 2027", "2027-03-20")]
    [InlineData("+0", "2026-03-02")]
    [InlineData("+14", "2026-03-16")]
    [InlineData("+ 14", "2026-03-16")]
    [InlineData("+2 weeks", "2026-03-16")]
    [InlineData("+1 month", "2026-04-02")]
    [InlineData("+3 decades", null)]
    [InlineData("+9999 weeks", null)]
    [InlineData("Monday", "2026-03-09")]
    [InlineData("tue", "2026-03-03")]
    [InlineData("sunday", "2026-03-08")]
    [InlineData("+99999", null)]
    [InlineData("14", null)]
    [InlineData("3/4", null)]
    [InlineData("3.4.2026", null)]
    [InlineData("30 Feb", null)]
    [InlineData("soon", null)]
    [InlineData("", null)]
    public void Days_are_read_as_people_write_them_where_there_is_one_reading(string text, string? day) =>
        Assert.Equal(day, Days.Read(text, Today)?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));

    [Theory]
    [InlineData(-400, "promised 26 Jan 2025, 400 days past", "late 400 d")]
    [InlineData(-1, "promised 1 Mar, 1 day past", "late 1 d")]
    [InlineData(0, "promised for today", "due today")]
    [InlineData(1, "promised for tomorrow", "due in 1 d")]
    [InlineData(2, "promised in 2 days", "due in 2 d")]
    [InlineData(3, "promised 5 Mar", "by 5 Mar")]
    [InlineData(400, "promised 6 Apr 2027", "by 6 Apr 2027")]
    public void A_promise_is_said_in_words(int days, string sentence, string briefly)
    {
        Assert.Equal(sentence, IntakeWords.Promised(Today.AddDays(days), Today));
        Assert.Equal(briefly, IntakeWords.PromisedBriefly(Today.AddDays(days), Today));
    }

    [Theory]
    [InlineData(0, 0, 0, "No step comes in or drops out.")]
    [InlineData(1, 0, 0, "1 step comes into the job.")]
    [InlineData(3, 0, 0, "3 steps come into the job.")]
    [InlineData(0, 1, 1, "1 step drops out (1 of them settled already; the log keeps it).")]
    [InlineData(0, 4, 0, "4 steps drop out.")]
    [InlineData(3, 4, 2, "3 steps come into the job, 4 steps drop out (2 of them settled already; the log keeps them).")]
    public void What_another_answer_does_is_one_sentence(int joining, int leaving, int settled, string sentence) =>
        Assert.Equal(sentence, IntakeWords.Sentence(new FactChange(joining, leaving, settled)));
}
