namespace ServiceRunner.Files.Sentences;

/// <summary>
/// The usual cautions, shown before the act. Precaution codes are those of GHS. They defer to the safety data sheet,
/// local codes and licensed practice, and never say that anything is safe.
/// </summary>
public static class Cautions
{
    /// <summary>A caution's sentence.</summary>
    public static string Sentence(string code) => code switch
    {
        "stored-energy" => "Stored energy: a spring under tension. Hold it, let it down under control.",
        "eyes" => "Eyes: wear eye protection (P280).",
        "flammable" => "Flammable: no flame, no spark, no hot surface near; keep the jar covered (P210, P233).",
        "vapour" => "Vapour: do not breathe it; work only with moving air (P261, P271).",
        "skin" => "Skin: gloves that this liquid does not pass (P280).",
        "corrosive" => "Corrosive: gloves and eye protection; rinse at once with water (P280, P305+P351+P338).",
        "heat" => "Heat: hot parts and tools look like cold ones.",
        "sharp" => "Sharp: edges and points; fingers behind the tool.",
        "flying-parts" => "Flying parts: cover with a finger or a sheet before it is free.",
        "luminous" => "Luminous paint may be radioactive: do not scrape, blow, brush or wash. Bag it, wash hands, ask competent advice.",
        "mercury" => "Mercury: no heat, no open dish; spills need competent help.",
        "beryllium-dust" => "Beryllium copper: no dry grinding or filing; its dust harms the lungs (P260).",
        "electricity" => "Electricity: unplug before opening.",
        "pressure" => "Pressure: keep clear of the line of the joint.",
        "suffocation" => "Vapour heavier than air collects in low places; do not work in a closed room (P271).",
        "ultrasonic-flammable" => "Never a flammable liquid in a tank that is not rated for it (P210).",
        _ => code,
    };

    /// <summary>The first words of a caution, where there is no room for its sentence.</summary>
    public static string Short(string code) => Sentence(code).Split([':', ';'])[0];

    /// <summary>What stands under every caution.</summary>
    public const string Defer = "The safety data sheet and local codes go before this line.";
}
