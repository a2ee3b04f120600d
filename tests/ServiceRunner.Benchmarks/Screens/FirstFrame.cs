namespace ServiceRunner.Benchmarks.Screens;

/// <summary>From starting the program to the last line of its first frame, with the invented workshop on the disk.</summary>
internal static class FirstFrame
{
    private const int Rounds = 11;

    public static void Run()
    {
        if (ShownProgram.WhyNot is { Length: > 0 } why)
        {
            Pairs.Line("not measured", why);
            return;
        }
        using Disk disk = new();
        List<double> console = [];
        foreach ((string name, string path) in Candidates.Builds)
        {
            string data = Candidates.Demo(disk, name);
            Pairs pairs = new($"{name}: first frame", $"bare screen, {Candidates.OwnBuild}", "ms");
            Ours(path, data);
            pairs.Run(Rounds, () => Ours(path, data), () => Bare(BareScreen.Name));
            pairs.Print();
            for (int i = 0; i < Rounds; i++) console.Add(Bare(BareConsole.Name));
        }
        Pairs.Line($"bare console program, {Candidates.OwnBuild}", $"{Pairs.Figure(Pairs.Median(console))} ms");
    }

    private static double Ours(string path, string data)
    {
        using ShownProgram shown = Candidates.Start(path, data);
        return shown.Until(Candidates.LastOfFrame);
    }

    private static double Bare(string mode)
    {
        using ShownProgram shown = new(Candidates.Self, mode);
        return shown.Until(BareScreen.Mark);
    }
}
