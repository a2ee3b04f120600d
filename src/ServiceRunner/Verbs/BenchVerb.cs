using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens;
using ServiceRunner.Session;
using ServiceRunner.Terminal;

namespace ServiceRunner.Verbs;

/// <summary>No verb: opens the bench on the screen.</summary>
internal static class BenchVerb
{
    public static int Run(string path, bool readOnly, bool monochrome)
    {
        MachineClock clock = new();
        if (!readOnly && FirstStart.IsDue(path) && FirstStart.Ask(path, clock) is not ExitCodes.Done and var refused) return refused;
        using BenchSession? session = House.Open(path, readOnly ? OpenMode.Read : OpenMode.Own, clock, out int exit);
        if (session is null) return exit;
        if (!readOnly && session.Bench.Repairer.Length == 0 && session.Workshop.People is [var only])
            session.Act(new BenchAction.SignIn(only.Initials), only.Initials);
        Shell shell = new(session, TimeProvider.System);
        foreach (LogNote note in session.Notes) shell.Say(NoteWords.Sentence(note, path), refusal: true);
        return TerminalHost.Run(shell, new TerminalOptions { Monochrome = monochrome });
    }
}
