using System.Globalization;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Procedures;
using ServiceRunner.Files.Tests.Checks;
using ServiceRunner.Files.Workshops;

using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Files.Tests.Procedures;

/// <summary>
/// Good files with slips of the hand in them: whatever comes of it, reading and checking end, and end without an
/// exception. The seed names the case again; FUZZ_ROUNDS makes it longer.
/// </summary>
public class FuzzTests
{
    private static readonly string[] Pieces =
        ["[", "]", "{", "}", ":", ": ", "- ", "\n", "\n  ", "\t", "'", "\"", "#", "&a ", "*a", "!!x ", "---\n", "|\n", ">", "?", ",", "\0", "\u202E", "\uD800", "é", "1,234", "yes", "take-in: ", "as: ", "~", "%", "\\", "@"];

    private static int Rounds => int.TryParse(Environment.GetEnvironmentVariable("FUZZ_ROUNDS"), NumberStyles.None, CultureInfo.InvariantCulture, out int rounds) ? rounds : 400;

    [Fact]
    public void Reading_and_checking_a_damaged_procedure_always_ends()
    {
        for (int seed = 0; seed < Rounds; seed++) Procedure(seed);
    }

    [Fact]
    public void Reading_and_checking_a_damaged_workshop_always_ends()
    {
        string good = File.ReadAllText(Path.Combine(Repository.Root, "docs", "workshop-file.md")).Split("```yaml\n")[1].Split("```")[0];
        for (int seed = 0; seed < Rounds; seed++)
        {
            string text = Damaged(good, seed);
            Attempt(seed, () =>
            {
                ReadWorkshop read = WorkshopReader.Read("w.yaml", text);
                return [.. read.Diagnostics, .. read.Workshop is { } workshop ? WorkshopChecks.Run("w.yaml", workshop) : []];
            });
        }
    }

    private static void Procedure(int seed)
    {
        string folder = Path.Combine(Repository.Root, "procedures");
        string[] files = [.. Directory.GetFiles(folder, "*.yaml").Where(f => new FileInfo(f).Length < 30_000).Order(StringComparer.Ordinal)];
        string text = Damaged(File.ReadAllText(files[seed % files.Length]), seed);
        ProcedureLibrary library = new(ProcedureSource.Texts([("damaged.yaml", text), ("line.yaml", File.ReadAllText(files[0]))]));
        Attempt(seed, () =>
        {
            ReadProcedure read = ProcedureReader.Read("damaged.yaml", text, library);
            return [.. read.Diagnostics, .. ProcedureChecks.Run(read, library)];
        });
        Attempt(seed, () => [.. library.List().Select(e => e.Fault).OfType<Diagnostic>()]);
    }

    private static void Attempt(int seed, Func<List<Diagnostic>> act)
    {
        try
        {
            foreach (Diagnostic diagnostic in act())
            {
                Assert.NotEqual("", diagnostic.Message);
                Assert.True(diagnostic.Place == default || (diagnostic.Place.Line > 0 && diagnostic.Place.Column > 0), $"seed {seed}: {diagnostic}");
            }
        }
        catch (Exception e) when (e is not Xunit.Sdk.XunitException)
        {
            Assert.Fail($"seed {seed}: {e}");
        }
    }

    private static string Damaged(string text, int seed)
    {
#pragma warning disable CA5394 // Chance is not a secret here, it must come again with its seed.
        Random random = new(seed);
        for (int slips = random.Next(1, 6); slips > 0; slips--)
        {
            int at = random.Next(text.Length), length = Math.Min(random.Next(1, 40), text.Length - at);
            text = random.Next(5) switch
            {
                0 => text.Remove(at, length),
                1 => text.Insert(at, Pieces[random.Next(Pieces.Length)]),
                2 => text.Insert(random.Next(text.Length), text.Substring(at, length)),
                3 => text.Remove(at, 1).Insert(at, Pieces[random.Next(Pieces.Length)]),
                _ => SwappedLines(text, random),
            };
            if (text.Length == 0) return "x";
        }
#pragma warning restore CA5394
        return text;
    }

    private static string SwappedLines(string text, Random random)
    {
        string[] lines = text.Split('\n');
        int a = random.Next(lines.Length), b = random.Next(lines.Length);
        (lines[a], lines[b]) = (lines[b], lines[a]);
        return string.Join('\n', lines);
    }
}
