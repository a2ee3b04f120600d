using ServiceRunner.Files.Data;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Pedal;

namespace ServiceRunner.Verbs;

/// <summary>
/// Presses a pedal of the bench that is open on a data folder. Switches call it, so it reads nothing but the folder's
/// marker: no journal, no workshop file.
/// </summary>
internal static class PedalVerb
{
    public static int Run(string dataFolder, string word) => Run(dataFolder, word, Console.Out, Console.Error);

    internal static int Run(string dataFolder, string word, TextWriter output, TextWriter errors)
    {
        if (PedalWords.Read(word) is null) return Say(errors, ExitCodes.Usage, $"there is no pedal word '{PedalPress.OneLine(word)}'; there are {PedalWords.All}.");
        return DataFolder.Open(dataFolder) switch
        {
            FolderRefused refused => Say(errors, ExitCodes.Folder, FaultWords.Sentence(refused.Fault, dataFolder)),
            FolderReady ready => Press(PedalPlaces.Of(ready.Folder), word, output, errors),
            _ => throw new InvalidOperationException("an outcome of no kind"),
        };
    }

    internal static int Press(PedalPlaces places, string word, TextWriter output, TextWriter errors)
    {
        switch (PedalCall.Press(places, word))
        {
            case null:
                return Say(errors, ExitCodes.NoBench, $"no bench is open on {places.DataFolder}; open one with 'servicerunner' in a terminal, or name another folder with --data.");
            case { } answer when answer.StartsWith("ok: ", StringComparison.Ordinal):
                output.WriteLine(answer[4..]);
                return ExitCodes.Done;
            case { } answer when answer.StartsWith("no: ", StringComparison.Ordinal):
                return Say(errors, ExitCodes.Found, answer[4..].TrimEnd('.') + ".");
            default:
                return Say(errors, ExitCodes.Found, "what listens there is not a bench.");
        }
    }

    private static int Say(TextWriter errors, int exit, string sentence)
    {
        errors.WriteLine($"servicerunner: {sentence}");
        return exit;
    }
}
