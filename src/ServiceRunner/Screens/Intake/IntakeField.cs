namespace ServiceRunner.Screens.Intake;

/// <summary>One line of an intake.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Text">What stands in it; empty if nothing.</param>
/// <param name="Hint">What belongs there.</param>
/// <param name="WhyNot">Why it cannot be changed, as a sentence; empty if it can.</param>
/// <param name="Edit">Asks for it.</param>
public sealed record IntakeField(string Name, string Text, string Hint, string WhyNot, Action Edit)
{
    /// <summary>True if what stands there should be looked at: a promised day that is near or past.</summary>
    public bool Urgent { get; init; }
}
