namespace ServiceRunner.Files.Procedures;

/// <summary>
/// How much a procedure may grow while groups become parts and files are taken in. A small text can name a large group
/// a thousand times; a procedure that somebody works by does not come near.
/// </summary>
internal sealed class Allowance
{
    /// <summary>How many mentions and steps may come of one procedure.</summary>
    public const int Most = 200_000;

    private int _taken;

    /// <summary>True once something was refused.</summary>
    public bool Spent { get; private set; }

    /// <summary>Takes so many, or refuses.</summary>
    public bool Take(int count)
    {
        if (Spent || count > Most - _taken) Spent = true;
        else _taken += count;
        return !Spent;
    }
}
