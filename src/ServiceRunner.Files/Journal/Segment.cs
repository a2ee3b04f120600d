using System.Globalization;

namespace ServiceRunner.Files.Journal;

/// <summary>One file of the journal: what was appended in one year.</summary>
internal readonly record struct Segment(string Folder, int Year)
{
    public string Name => NameOf(Year);
    public string Path => System.IO.Path.Combine(Folder, Name);

    public static string NameOf(int year) => string.Create(CultureInfo.InvariantCulture, $"journal-{year:0000}.log");

    /// <summary>The segments there are, oldest first. A file of any other name is not the journal's.</summary>
    public static IReadOnlyList<Segment> In(string folder)
    {
        List<int> years = [];
        foreach (string path in Directory.EnumerateFiles(folder, "journal-*.log"))
        {
            string name = System.IO.Path.GetFileName(path);
            if (name.Length == 16 && int.TryParse(name.AsSpan(8, 4), NumberStyles.None, CultureInfo.InvariantCulture, out int year)) years.Add(year);
        }
        years.Sort();
        return [.. years.Select(y => new Segment(folder, y))];
    }
}

/// <summary>Where a line lies.</summary>
internal readonly record struct LinePlace(int Year, long Offset, int Length)
{
    public long End => Offset + Length;
}
