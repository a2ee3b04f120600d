using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Tests.Sentences;

public class IntakeWordsTests
{
    private static readonly DateOnly Today = new(2026, 3, 2);

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
