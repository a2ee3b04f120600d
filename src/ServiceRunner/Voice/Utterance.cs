using ServiceRunner.Core.Jobs;

namespace ServiceRunner.Voice;

/// <summary>Something to be told: the words of a step, or those of an alarm behind its tone.</summary>
/// <param name="Text">As on the screen.</param>
/// <param name="Urgency">Of an alarm; null for a step, and for what is said again.</param>
/// <param name="About">What the alarm is about.</param>
internal sealed record Utterance(string Text, Urgency? Urgency = null, string About = "")
{
    /// <summary>True for what another step may cut short.</summary>
    public bool GivesWay => Urgency is null;

    /// <summary>The same words, without a tone.</summary>
    public Utterance Again => new(Text);
}

/// <summary>An alarm that was not told yet.</summary>
/// <param name="Urgency">How urgent it is.</param>
/// <param name="Text">Its words.</param>
/// <param name="About">What it is about.</param>
public sealed record WaitingAlarm(Urgency Urgency, string Text, string About);
