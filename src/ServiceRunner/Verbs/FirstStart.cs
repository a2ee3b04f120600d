using System.Globalization;
using ServiceRunner.Core.Benches;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens;
using ServiceRunner.Session;

namespace ServiceRunner.Verbs;

/// <summary>The first start: asks who works here, makes the data folder and the workshop file, and says where.</summary>
internal static class FirstStart
{
    /// <summary>True if there is nothing at the path yet, so that asking makes sense.</summary>
    public static bool IsDue(string path) => !Directory.Exists(path) || !Directory.EnumerateFileSystemEntries(path).Any();

    /// <summary>Asks on the plain terminal and makes everything; the exit code, 0 if all is there.</summary>
    public static int Ask(string path, MachineClock clock)
    {
        if (Console.IsInputRedirected)
        {
            Console.Error.WriteLine($"servicerunner: there is no data folder at {path} yet; start 'servicerunner' in a terminal once to make it, or try 'servicerunner demo'.");
            return ExitCodes.Folder;
        }
        Say("This is the first start. The workshop's data will lie in");
        Console.WriteLine(path);
        if (Read("Your initials (they stand beside everything you write down): ", "Initials are one to six letters or digits.", Initials) is not { } initials) return ExitCodes.Usage;
        if (Read("Your name, as on a report: ", "A name has at least one letter.", Name) is not { } name) return ExitCodes.Usage;
        string workshop = Read("What the workshop is called (Enter for 'My workshop'): ", "", text => text) is { Length: > 0 } typed ? typed : "My workshop";
        return Make(path, initials, name, workshop, clock);
    }

    private static int Make(string path, string initials, string name, string workshop, MachineClock clock)
    {
        if (DataFolder.Create(path) is FolderRefused refused)
        {
            Console.Error.WriteLine($"servicerunner: {FaultWords.Sentence(refused.Fault, path)}");
            return ExitCodes.Folder;
        }
        string file = Path.Combine(path, House.WorkshopFile);
        File.WriteAllText(file, Text(initials, name, workshop));
        using BenchSession? session = House.Open(path, OpenMode.Own, clock, out int exit);
        if (session is null) return exit;
        session.Act(new BenchAction.Begin(workshop), initials);
        session.Act(new BenchAction.SignIn(initials), initials);
        Say("Made. Jars, lubricants, colleagues and the pedal go, by hand, into your workshop file");
        Console.WriteLine(file);
        Say("Press Enter to open the bench.");
        Console.ReadLine();
        return ExitCodes.Done;
    }

    private static string Text(string initials, string name, string workshop) => House.Embedded("demo/").First(f => f.Name == "first-workshop.yaml").Text
        .Replace("{workshop}", Quoted(workshop), StringComparison.Ordinal)
        .Replace("{initials}", initials, StringComparison.Ordinal)
        .Replace("{name}", Quoted(name), StringComparison.Ordinal);

    private static string Quoted(string text) => $"'{string.Concat(text.Where(c => !char.IsControl(c))).Replace("'", "''", StringComparison.Ordinal)}'";

    private static string? Initials(string text) =>
        text.Length is >= 1 and <= 6 && text.All(char.IsLetterOrDigit) ? text.ToUpper(CultureInfo.InvariantCulture) : null;

    private static string? Name(string text) => text.Any(char.IsLetter) ? text : null;

    // A terminal breaks a long line wherever it ends; a path stands on a line of its own, so that it can be copied.
    private static void Say(string sentence)
    {
        foreach (string line in Paragraph.Wrap(sentence, Math.Max(20, Width - 1))) Console.WriteLine(line);
    }

    private static int Width => Console.IsOutputRedirected || Console.WindowWidth <= 0 ? 80 : Console.WindowWidth;

    private static string? Read(string question, string complaint, Func<string, string?> take)
    {
        while (true)
        {
            Console.Write(question);
            if (Console.ReadLine() is not { } line) return null;
            if (take(line.Trim()) is { } taken) return taken;
            Say(complaint);
        }
    }
}
