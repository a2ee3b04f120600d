using System.Globalization;
using ServiceRunner.Files.Index;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Session;

namespace ServiceRunner.Verbs;

/// <summary>Lists jobs: columns on a terminal, tabs in a pipe.</summary>
internal static class JobsVerb
{
    public static int Run(string path, bool all)
    {
        using BenchSession? session = House.Open(path, OpenMode.Read, new MachineClock(), out int exit);
        if (session is null) return exit;
        List<string[]> rows = [["number", "stands", "since", "steps", "what", "owner", "promised"]];
        foreach (SubjectRow row in (all ? session.AllJobs() : session.Board()).OrderBy(r => r.Number, StringComparer.Ordinal))
            rows.Add([row.Number, row.State, row.Since.ToLocalTime().ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture), $"{row.Done}/{row.Total}",
                row.Title, session.Owners.NameOf(row.Owner), row.Promised?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? ""]);
        rows = [.. rows.Select(r => r.Select(PlainText.Of).ToArray())];
        if (Console.IsOutputRedirected)
        {
            foreach (string[] row in rows) Console.Out.WriteLine(string.Join('\t', row));
            return ExitCodes.Done;
        }
        int[] wide = [.. Enumerable.Range(0, rows[0].Length).Select(c => rows.Max(r => Screens.Sheet.Columns(r[c])))];
        foreach (string[] row in rows)
            Console.Out.WriteLine(string.Join("  ", row.Select((text, c) => text + new string(' ', wide[c] - Screens.Sheet.Columns(text)))).TrimEnd());
        return ExitCodes.Done;
    }
}
