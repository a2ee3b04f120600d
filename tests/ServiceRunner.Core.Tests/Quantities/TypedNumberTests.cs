using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Tests.Quantities;

public class TypedNumberTests
{
    [Theory]
    [InlineData("0.03", 0.03)]
    [InlineData("0,03", 0.03)]
    [InlineData("0,030", 0.03)]
    [InlineData("1.234", 1.234)]
    [InlineData(" +4 ", 4)]
    [InlineData("-4", -4)]
    [InlineData("−4,5", -4.5)]
    [InlineData(".5", 0.5)]
    [InlineData("1234,5", 1234.5)]
    public void Point_and_comma_are_both_decimal_marks(string typed, double value)
    {
        Assert.Equal(TypedNumber.Fault.None, TypedNumber.Read(typed, out TypedNumber number));
        Assert.Equal((decimal)value, number.Value);
        Assert.Equal(typed.Trim(), number.AsTyped);
    }

    [Theory]
    [InlineData("", TypedNumber.Fault.Empty)]
    [InlineData("  ", TypedNumber.Fault.Empty)]
    [InlineData("1,234", TypedNumber.Fault.Ambiguous)]
    [InlineData("12,345", TypedNumber.Fault.Ambiguous)]
    [InlineData("1.234,5", TypedNumber.Fault.Ambiguous)]
    [InlineData("1,2,3", TypedNumber.Fault.Ambiguous)]
    [InlineData("free", TypedNumber.Fault.NotANumber)]
    [InlineData("4-2", TypedNumber.Fault.NotANumber)]
    [InlineData("+-4", TypedNumber.Fault.NotANumber)]
    [InlineData("1e5", TypedNumber.Fault.NotANumber)]
    [InlineData(",", TypedNumber.Fault.NotANumber)]
    [InlineData("٣", TypedNumber.Fault.NotANumber)]
    public void What_is_no_number_says_why(string typed, TypedNumber.Fault fault) => Assert.Equal(fault, TypedNumber.Read(typed, out _));
}
