namespace ServiceRunner.Benchmarks.Screens;

/// <summary>A program that says one word and ends: what starting the runtime costs.</summary>
internal static class BareConsole
{
    public const string Name = "bare-console";

    public static int Run()
    {
        Console.WriteLine(BareScreen.Mark);
        return 0;
    }
}
