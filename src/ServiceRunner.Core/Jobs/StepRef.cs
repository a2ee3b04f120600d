namespace ServiceRunner.Core.Jobs;

/// <summary>A step of one joined procedure: two jewel repairs have the same steps and are two instances.</summary>
/// <param name="Instance">Which joined procedure of the job: <c>1</c> for the first.</param>
/// <param name="Step">The step's id in that procedure.</param>
public readonly record struct StepKey(string Instance, string Step)
{
    /// <inheritdoc/>
    public override string ToString() => $"{Instance}:{Step}";
}

/// <summary>One doing of a step: the second time is another occurrence.</summary>
/// <param name="Instance">Which joined procedure of the job.</param>
/// <param name="Step">The step's id in that procedure.</param>
/// <param name="Occurrence">From 1.</param>
public readonly record struct StepRef(string Instance, string Step, int Occurrence)
{
    /// <summary>The step, whichever time it is done.</summary>
    public StepKey Key => new(Instance, Step);

    /// <summary>The stored form, <c>1:lift-balance:1</c>.</summary>
    public override string ToString() => $"{Instance}:{Step}:{Occurrence}";

    /// <summary>Reads the stored form.</summary>
    /// <exception cref="FormatException">The text is not of that form.</exception>
    public static StepRef Parse(string text)
    {
        int first = text.IndexOf(':', StringComparison.Ordinal), last = text.LastIndexOf(':');
        if (first < 1 || last <= first + 1 || !int.TryParse(text.AsSpan(last + 1), out int occurrence) || occurrence < 1)
            throw new FormatException($"'{text}' is not a step reference");
        return new StepRef(text[..first], text[(first + 1)..last], occurrence);
    }
}
