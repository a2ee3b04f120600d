namespace ServiceRunner.Files.Checks.Dangers;

/// <summary>What the name of a solution tells of it. A procedure names classes; the bottle itself is the workshop's.</summary>
internal readonly record struct Solution(bool Alcohol, bool Hydrocarbon, bool Ammonia, bool Water)
{
    private static readonly string[] Alcohols =
        ["alcohol", "ethanol", "methanol", "isopropanol", "propanol", "isopropyl", "methylated", "denatured", "ipa"];

    private static readonly string[] Hydrocarbons =
        ["naphtha", "petrol", "petroleum", "benzine", "heptane", "hexane", "hydrocarbon", "gasoline", "acetone", "stoddard", "paraffin", "kerosene"];

    public bool Flammable => Alcohol || Hydrocarbon;

    public static Solution Of(string name)
    {
        string[] words = Substance.WordsOf(name);
        bool none = words.Contains("free") || words.Contains("non");
        bool alcohol = !none && words.Any(Alcohols.Contains);
        // White and mineral spirit are hydrocarbons; any other spirit is taken for one that dissolves shellac as well.
        bool spirit = !none && words.Any(w => w is "spirit" or "spirits");
        bool mineral = spirit && words.Any(w => w is "white" or "mineral" or "petroleum");
        return new Solution(
            alcohol || (spirit && !mineral),
            mineral || (!none && words.Any(Hydrocarbons.Contains)),
            words.Any(w => w.StartsWith("ammonia", StringComparison.Ordinal)) && !none,
            words.Any(w => w is "water" or "distilled" or "aqueous" or "soap") && !none);
    }
}
