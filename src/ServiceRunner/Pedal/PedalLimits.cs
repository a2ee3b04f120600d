namespace ServiceRunner.Pedal;

/// <summary>What one client, or all of them together, may take of the bench.</summary>
internal sealed record PedalLimits
{
    /// <summary>Bytes of a line, its end included.</summary>
    public int LineBytes { get; init; } = 256;

    /// <summary>Clients that are listened to at the same time.</summary>
    public int Connections { get; init; } = 8;

    /// <summary>Presses that wait for the bench.</summary>
    public int Waiting { get; init; } = 32;

    /// <summary>How long a client may take over a line, and the bench over its answer.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(2);
}
