using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Diagnosis;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Lines;
using ServiceRunner.Screens;
using ServiceRunner.Screens.Settings;
using ServiceRunner.Session;
using ServiceRunner.Terminal;

namespace ServiceRunner.Verbs;

/// <summary>No verb: opens the bench on the screen, or line by line.</summary>
internal static class BenchVerb
{
    public static int Run(string path, bool readOnly, bool monochrome, LineMode mode, DiagnosticLog diagnosis)
    {
        Digest.Prepare();
        MachineClock clock = new();
        if (!readOnly && FirstStart.IsDue(path) && FirstStart.Ask(path, clock) is not ExitCodes.Done and var refused) return refused;
        using BenchSession? session = House.Open(path, readOnly ? OpenMode.Read : OpenMode.Own, clock, out int exit);
        if (session is null) return exit;
        if (diagnosis.Path is null && (!readOnly || diagnosis.Closely)) diagnosis.OpenIn(path, "bench");
        session.Wrote = diagnosis.Wrote;
        if (!readOnly && session.Bench.Repairer.Length == 0 && session.Workshop.People is [var only])
            session.Act(new BenchAction.SignIn(only.Initials), only.Initials);
        Shell shell = new(session, TimeProvider.System);
        foreach (LogNote note in session.Notes) shell.Notice(NoteWords.Sentence(note, path));
        if (diagnosis.Closely) shell.Noticed = diagnosis.Note;
        using Companions companions = new(shell, bell: mode.IsOn ? null : shell.Ring, diagnosis);
        shell.Ticking = companions.Tick;
        if (shell.Quiet) shell.BeQuiet(true);
        shell.StartedWith = new StartedWith
        {
            FolderFrom = path == House.DefaultFolder ? "built in" : path == House.DemoFolder ? "the verb demo" : "option --data",
            Monochrome = monochrome,
            NoColour = Environment.GetEnvironmentVariable("NO_COLOR") is { Length: > 0 },
            AllColours = Environment.GetEnvironmentVariable("COLORTERM") is "truecolor" or "24bit",
            Diagnose = diagnosis.Closely,
            DiagnosticLog = () => diagnosis.Path ?? "",
            Player = () => companions.Player,
            Talker = () => companions.Talker,
            DiskLeft = () => DiskSpace.Left(path),
        };
        return mode.IsOn ? LineHost.Run(shell, mode.Why) : TerminalHost.Run(shell, new TerminalOptions { Monochrome = monochrome, Failed = diagnosis.Fault });
    }
}
