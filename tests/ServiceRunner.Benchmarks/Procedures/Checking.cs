using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Procedures;
using ServiceRunner.Verbs;
using YamlDotNet.Core;

namespace ServiceRunner.Benchmarks.Procedures;

/// <summary>
/// A thousand procedures read and checked in memory, against the bare events of the YAML parser over the same texts. The
/// texts are those shipped, each under many ids.
/// </summary>
internal static class Checking
{
    private const int Texts = 1_000, Rounds = 5;

    public static void Run()
    {
        List<(string Name, string Text)> texts = Make();
        Pairs.Line("texts", $"{texts.Count:N0}, {texts.Sum(t => (long)t.Text.Length) >> 10:N0} KiB");
        Pairs pairs = new("read and checked in memory", "bare parser events", "ms");
        double first = Check(texts);
        pairs.Run(Rounds, () => Check(texts), () => Bare(texts));
        pairs.Print(mostRatio: 3);
        Pairs.Line("the first time in the process", $"{Pairs.Figure(first)} ms");
        Parts(texts);
        FromDisk(texts);
    }

    private static List<(string Name, string Text)> Make()
    {
        (string Name, string Text)[] shipped = [.. House.Embedded("procedures/")];
        List<(string Name, string Text)> texts = [];
        for (int i = 0; i < Texts; i++)
        {
            (string name, string text) = shipped[i % shipped.Length];
            string stem = Path.GetFileNameWithoutExtension(name);
            if (!text.Contains($"procedure: {stem}", StringComparison.Ordinal)) throw new InvalidOperationException($"{name} is not called after its procedure");
            texts.Add(($"{stem}-{i}.yaml", text.Replace($"procedure: {stem}", $"procedure: {stem}-{i}", StringComparison.Ordinal)));
        }
        return texts;
    }

    private static double Check(List<(string Name, string Text)> texts)
    {
        ProcedureLibrary library = House.LibraryOf(null);
        return Pairs.Milliseconds(() =>
        {
            foreach ((string name, string text) in texts)
            {
                ReadProcedure read = ProcedureReader.Read(name, text, library);
                if (read.HasErrors) throw new InvalidOperationException($"{name} has errors");
                ProcedureChecks.Run(read, library);
            }
        });
    }

    private static double Bare(List<(string Name, string Text)> texts) => Pairs.Milliseconds(() =>
    {
        foreach ((_, string text) in texts)
        {
            Parser parser = new(new Scanner(new StringReader(text), skipComments: true));
            while (parser.MoveNext()) { }
        }
    });

    // Where the time goes: reading alone, and the checks of what was read.
    private static void Parts(List<(string Name, string Text)> texts)
    {
        List<double> reading = [], checks = [];
        for (int i = 0; i < Rounds; i++)
        {
            ProcedureLibrary library = House.LibraryOf(null);
            double read = 0, check = 0;
            foreach ((string name, string text) in texts)
            {
                ReadProcedure procedure = null!;
                read += Pairs.Milliseconds(() => procedure = ProcedureReader.Read(name, text, library));
                check += Pairs.Milliseconds(() => ProcedureChecks.Run(procedure, library));
            }
            reading.Add(read);
            checks.Add(check);
        }
        Pairs.Line("of that: read and put together", $"{Pairs.Figure(Pairs.Median(reading))} ms");
        Pairs.Line("of that: the checks", $"{Pairs.Figure(Pairs.Median(checks))} ms");
    }

    private static void FromDisk(List<(string Name, string Text)> texts)
    {
        using Disk disk = new();
        foreach ((string name, string text) in texts) File.WriteAllText(disk.In(name), text);
        List<double> took = [];
        for (int i = 0; i < 3; i++) took.Add(Pairs.Milliseconds(() => Checker.Check([disk.Folder], House.LibraryOf(null))));
        Pairs.Line("the same as files, by the 'check' verb's checker", $"{Pairs.Figure(Pairs.Median(took))} ms");
    }
}
