using ServiceRunner.Files.Data;

namespace ServiceRunner.Files.Journal;

/// <summary>Reads one subject from the whole journal without any index: slow, and right.</summary>
internal static class SubjectScan
{
    /// <param name="knownN">The last line that is known to have been acknowledged.</param>
    /// <param name="flaw">Where a reading by the index stumbled.</param>
    public static SubjectReading Read(string folder, string subject, long knownN, Damaged? flaw)
    {
        List<LogLine> lines = [];
        List<Damaged> damage = [];
        Damaged? broken = null;
        string lastFile = "";
        long lastOffset = -1;
        foreach (ScanItem item in JournalScan.From(Segment.In(folder), default, new Chains(default, null, null)))
        {
            if (item is ScannedDamage found) damage.Add(found.ToFault());
            if (item is not ScannedLine { Line: var line } || line.Subject != subject || broken is not null) continue;
            LogLine? before = lines.Count > 0 ? lines[^1] : null;
            if (line.SubjectSequence != (before?.SubjectSequence ?? 0) + 1) broken = new Damaged(item.File, item.Offset, Damage.SubjectSequence);
            else if (line.PreviousBody != (before?.BodyHash ?? default)) broken = new Damaged(item.File, item.Offset, Damage.BodyLink);
            else
            {
                lines.Add(line);
                (lastFile, lastOffset) = (item.File, item.Offset);
            }
        }
        if (broken is null && lines.Count >= knownN) return new SubjectReading(lines, null);
        // The cause is named rather than its effect: the damaged line itself, if it can be told.
        Damaged? cause = damage.Find(d => flaw is not null && d.File == flaw.File && d.Offset == flaw.Offset)
            ?? damage.Find(d => (string.CompareOrdinal(d.File, lastFile), d.Offset > lastOffset) is (> 0, _) or (0, true));
        return new SubjectReading(lines, cause ?? broken ?? flaw ?? new Damaged(lastFile, Math.Max(0, lastOffset), Damage.Missing));
    }
}
