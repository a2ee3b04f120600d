namespace ServiceRunner.Core.Workshops;

/// <summary>Whether a second person looks where a procedure asks for one.</summary>
public enum WitnessWish
{
    /// <summary>Where there is somebody: leaving it is a deviation, except where one person works alone.</summary>
    Optional,

    /// <summary>Always: leaving it is a deviation, and wants a reason.</summary>
    Wanted,

    /// <summary>Never: nobody is asked.</summary>
    Never,
}
