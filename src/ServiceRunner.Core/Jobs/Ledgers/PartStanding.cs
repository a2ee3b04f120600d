namespace ServiceRunner.Core.Jobs;

/// <summary>The one thing to know of a part at a glance. Its place and its care say more.</summary>
public enum PartStanding
{
    /// <summary>Where it was on arrival: on the movement.</summary>
    NotYetOff,

    /// <summary>In the tray.</summary>
    There,

    /// <summary>In a jar, a spin-off or a drying that runs.</summary>
    InBasket,

    /// <summary>Out of a liquid and not dried.</summary>
    Wet,

    /// <summary>Waiting for its repair.</summary>
    InRepair,

    /// <summary>On the movement, to try it.</summary>
    TriedDry,

    /// <summary>On the movement again, for good.</summary>
    Fitted,

    /// <summary>Laid apart.</summary>
    SetAside,

    /// <summary>Away from the workshop.</summary>
    SentOut,

    /// <summary>Not to be found.</summary>
    Lost,

    /// <summary>Another one stands for it, as older logs say it.</summary>
    Replaced,
}

/// <summary>Where parts stand.</summary>
public static class PartStandings
{
    /// <summary>Where one stands. That it is not at hand comes before what was done to it.</summary>
    public static PartStanding StandingOf(this Job job, Plan plan, string part) => job.PlaceOf(part) switch
    {
        PartPlace.Lost => PartStanding.Lost,
        PartPlace.SentOut => PartStanding.SentOut,
        PartPlace.SetAside => PartStanding.SetAside,
        PartPlace.Replaced => PartStanding.Replaced,
        _ when job.SoakOf(part) is not null => PartStanding.InBasket,
        _ when Repair.OpenOn(job, plan, part) is not null => PartStanding.InRepair,
        PartPlace.TriedDry => PartStanding.TriedDry,
        PartPlace.OnMovement when job.Parts.ContainsKey(part) => PartStanding.Fitted,
        _ when job.CareOf(part).Wet => PartStanding.Wet,
        PartPlace.InTray => PartStanding.There,
        _ => PartStanding.NotYetOff,
    };
}
