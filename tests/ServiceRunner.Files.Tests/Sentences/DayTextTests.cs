using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Tests.Sentences;

public class DayTextTests
{
    private static readonly DateOnly Today = new(2026, 3, 2);

    [Theory]
    [InlineData("2026-03-02", "2026-03-02")]
    [InlineData("2026-3-2", "2026-03-02")]
    [InlineData(" 2 Mar 2026 ", "2026-03-02")]
    [InlineData("2 march 2026", "2026-03-02")]
    [InlineData("March 2, 2026", "2026-03-02")]
    [InlineData("2.3.2026", "2026-03-02")]
    [InlineData("2.3.26", "2026-03-02")]
    [InlineData("2 Mar", "2026-03-02")]
    [InlineData("3 Mar", "2025-03-03")]
    [InlineData("31/1/2026", "2026-01-31")]
    [InlineData("1/31/2026", "2026-01-31")]
    [InlineData("5/5/2025", "2025-05-05")]
    public void A_day_as_people_write_it(string typed, string day)
    {
        Assert.Equal("", DayText.Read(typed, Today, ahead: false, out DateOnly? read));
        Assert.Equal(DateOnly.ParseExact(day, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), read);
    }

    [Theory]
    [InlineData("1 Mar", "2027-03-01")]
    [InlineData("2 Mar", "2026-03-02")]
    [InlineData("Feb 2028", "2028-02-29")]
    [InlineData("02/2028", "2028-02-29")]
    [InlineData("2028-02", "2028-02-29")]
    public void A_last_day_lies_ahead_and_may_be_a_month(string typed, string day)
    {
        Assert.Equal("", DayText.Read(typed, Today, ahead: true, out DateOnly? read));
        Assert.Equal(DateOnly.ParseExact(day, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), read);
    }

    [Theory]
    [InlineData("3/4/2026", "'3/4/2026' can be read as two days; type 2026-04-03 or 2026-03-04.")]
    [InlineData("03-04-2026", "'03-04-2026' can be read as two days; type 2026-04-03 or 2026-03-04.")]
    [InlineData("2026-02-30", "'2026-02-30' is not a day. As 2026-03-02, or 2 Mar 2026.")]
    [InlineData("31/31/2026", "'31/31/2026' is not a day. As 2026-03-02, or 2 Mar 2026.")]
    [InlineData("Mar 2026", "'Mar 2026' names a month; name the day too, as 2 Mar 2026.")]
    [InlineData("soon", "'soon' is not a day. As 2026-03-02, or 2 Mar 2026.")]
    [InlineData("0001-01-01", "'0001-01-01' is not a day. As 2026-03-02, or 2 Mar 2026.")]
    public void What_is_no_day_or_two_is_refused(string typed, string sentence)
    {
        Assert.Equal(sentence, DayText.Read(typed, Today, ahead: false, out DateOnly? read));
        Assert.Null(read);
    }

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
    [InlineData("3.4.2026", "2026-04-03")]
    [InlineData("30 Feb", null)]
    [InlineData("soon", null)]
    public void A_day_ahead_may_be_told_from_today(string text, string? day)
    {
        string complaint = DayText.Read(text, Today, ahead: true, out DateOnly? read);
        Assert.Equal(day, read?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(day is null ? $"'{text}' is not a day. As 2026-03-20, 20 Mar, Monday, +14 days or +3 weeks." : "", complaint);
    }

    [Fact]
    public void Nothing_typed_is_no_day_and_no_fault()
    {
        Assert.Equal("", DayText.Read("  ", Today, ahead: true, out DateOnly? read));
        Assert.Null(read);
    }
}
