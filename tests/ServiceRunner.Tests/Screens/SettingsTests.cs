using ServiceRunner.Screens.Settings;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens;

/// <summary>Every setting in force, where it comes from, how to change it.</summary>
public class SettingsTests
{
    private static string All(PaperBench bench) =>
        string.Join('\n', new InForce(bench.Shell).All().Select(s => $"{s.Name}: {s.Value}\n    {s.From}. {s.Change}")).Replace(bench.Path, "DATA", StringComparison.Ordinal);

    [Fact]
    public void All_settings_of_the_invented_workshop()
    {
        using PaperBench bench = new();
        Snapshot.Verify(All(bench));
    }

    [Fact]
    public void They_are_reached_from_the_bench_scroll_and_lead_back()
    {
        using PaperBench bench = new();
        bench.Keys("o", "PageDown");
        Assert.Contains("Dead time of the pedal  700 ms", bench.Picture(120, 40), StringComparison.Ordinal);
        for (int i = 0; i < 30; i++) bench.Keys("PageDown");
        Snapshot.Verify(bench.Picture());
        for (int i = 0; i < 30; i++) bench.Keys("PageUp");
        Assert.Contains("Data folder", bench.Picture(), StringComparison.Ordinal);
        Assert.Equal("Bench", bench.Keys("Esc").Shell.Screen.Name);
    }

    [Fact]
    public void What_is_not_in_the_workshop_file_is_built_in_and_what_is_has_its_line()
    {
        using PaperBench bench = new("workshop: quay-lane\nformat: 1\nname: Quay Lane\npeople:\n  - {initials: IV, name: Ilse Varnau}\npedal:\n  go-on: F9\nvoice: {speech: yes,\n  words-a-minute: 160}\n");
        string all = All(bench);
        foreach (string setting in new[]
        {
            "Going on: F9\n    workshop file, line 7. 'go-on' of 'pedal' in the workshop file.",
            "Looking back: PageUp\n    built in. 'back' of 'pedal' in the workshop file.",
            "People: IV Ilse Varnau\n    workshop file, line 4. 'people' in the workshop file.",
            "Rate of speech: 160 words a minute\n    workshop file, line 9. 'words-a-minute' of 'voice' in the workshop file.",
            "Tones: yes\n    built in. 'sound' of 'voice' in the workshop file.",
        })
            Assert.Contains(setting, all, StringComparison.Ordinal);
    }

    [Fact]
    public void Options_and_variables_are_named_as_where_it_comes_from()
    {
        using PaperBench bench = new();
        bench.Shell.StartedWith = new StartedWith { NoColour = true, FolderFrom = "option --data", Diagnose = true, DiagnosticLog = () => "DATA/diagnostic.log", Player = () => "aplay", DiskLeft = () => 512L << 20 };
        string all = All(bench);
        Assert.Contains("Colour: none\n    environment variable NO_COLOR. Unset it.", all, StringComparison.Ordinal);
        Assert.Contains("Data folder: DATA\n    option --data. --data FOLDER names another.", all, StringComparison.Ordinal);
        Assert.Contains("Diagnostic log: DATA/diagnostic.log\n    option --diagnose. --diagnose writes more.", all, StringComparison.Ordinal);
        Assert.Contains("Sound program: aplay\n", all, StringComparison.Ordinal);
        Assert.Contains("Disk: told when less than 64 MiB are left; 512 MiB are left\n", all, StringComparison.Ordinal);
    }

    [Fact]
    public void Large_letters_and_quiet_are_remembered_beside_the_log()
    {
        using PaperBench bench = new();
        Assert.Equal("Jobs are shown in large letters.", bench.Keys("F6").Shell.Message);
        bench.Keys("F8");
        int entries = bench.Session.Bench.LastNumber;
        bench.Restart();
        Assert.True(bench.Shell.Large);
        Assert.True(bench.Shell.Quiet);
        Assert.Contains("Quiet: yes\n    F8, remembered. F8.", All(bench), StringComparison.Ordinal);
        Assert.Contains("Large letters: yes\n    F6, remembered. F6.", All(bench), StringComparison.Ordinal);
        bench.Keys("F6", "F8").Restart();
        Assert.False(bench.Shell.Large);
        Assert.False(bench.Shell.Quiet);
        Assert.Equal(entries, bench.Session.Bench.LastNumber);
        bench.WithJob().Keys("F6");
        Assert.True(bench.Run.Large);
    }

    [Fact]
    public void A_memory_that_cannot_be_read_is_none()
    {
        using PaperBench bench = new();
        File.WriteAllBytes(Path.Combine(bench.Path, "remembered"), [0, 255, 10, 13, 7]);
        bench.Restart();
        Assert.False(bench.Shell.Large);
        File.Delete(Path.Combine(bench.Path, "remembered"));
        Directory.CreateDirectory(Path.Combine(bench.Path, "remembered"));
        bench.Restart().Keys("F6");
        Assert.True(bench.Shell.Large);
    }
}
