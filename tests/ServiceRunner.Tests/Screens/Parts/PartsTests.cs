using System.Text;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Screens.Parts;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens.Parts;

/// <summary>The tray and the screw seats as a picture, and what can be done with one part by itself.</summary>
public class PartsTests
{
    private static PartsModel Model(PaperBench bench) => Assert.IsType<PartsModel>(bench.Shell.Screen);

    private static PaperBench Typing(PaperBench bench, string text)
    {
        foreach (char c in text) bench.Keys(c == ' ' ? "Space" : c.ToString());
        return bench;
    }

    // Opens the marked part's list and takes the line that contains a text.
    private static PaperBench Take(PaperBench bench, string line) => Typing(bench.Keys("Enter"), line).Keys("Enter");

    private static Job JobOf(PaperBench bench) => Model(bench).Job.State;

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void The_tray_in_the_middle_of_the_work(int width, int height)
    {
        using PaperBench bench = new PaperBench().WithJob().To("wash/jars-ready").Keys("F3");
        Typing(bench, "barrel bridge");
        bench.Keys("Esc");
        Take(bench, "Set aside").Type("to be looked at again");
        bench.Shell.Draw(width, height);
        Typing(bench, "fourth").Keys("Esc");
        Take(bench, "Lost");
        Typing(bench, "click spring").Keys("Esc");
        Snapshot.Verify(bench.Picture(width, height), $"{width}x{height}");
    }

    [Fact]
    public void What_is_in_a_jar_wet_tried_and_fitted_have_signs_of_their_own()
    {
        using PaperBench bench = new PaperBench().WithJob().To("wash/jars-ready").Keys("F3");
        Typing(bench, "crown wheel core").Keys("Esc");
        Take(bench, "for good");
        Take(bench, "Looked over");
        Typing(bench, "third wheel").Keys("Esc");
        Take(bench, "tried dry");
        Snapshot.Verify(bench.Picture());
        bench.Keys("Esc").To("wash/rinse-tap");
        bench.Keys("F3");
        Snapshot.Verify(bench.Picture(), "washed");
    }

    [Fact]
    public void The_part_of_the_step_at_hand_is_marked_first()
    {
        using PaperBench bench = new PaperBench().WithJob().To("balance-off").Keys("F3");
        Assert.Equal("balance-cock-screw", Model(bench).Marked);
    }

    [Fact]
    public void Arrows_go_from_compartment_to_compartment_and_typing_jumps()
    {
        using PaperBench bench = new PaperBench().WithJob().Keys("PageDown", "F3");
        PartsModel model = Model(bench);
        Assert.Equal("balance", model.Marked);
        bench.Keys("Right", "Right", "Down");
        Assert.Equal("train-bridge-screw-1", model.Marked);
        bench.Keys("Up");
        Assert.Equal("balance-cock-screw", model.Marked);
        Typing(bench, "C5");
        Assert.Equal("barrel-bridge", model.Marked);
        bench.Keys("Esc");
        Typing(bench, "wheel");
        string first = model.Marked;
        bench.Keys("Tab");
        Assert.NotEqual(first, model.Marked);
        Assert.Contains("Looking for 'wheel'", bench.Picture(), StringComparison.Ordinal);
        bench.Keys("q");
        Assert.Equal("No part's name contains 'wheelq'.", bench.Shell.Message);
        bench.Keys("Esc", "Esc");
        Assert.IsType<ServiceRunner.Screens.Run.RunModel>(bench.Shell.Screen);
    }

    [Fact]
    public void Set_aside_wants_a_few_words_and_u_takes_it_back()
    {
        using PaperBench bench = new PaperBench().WithJob().Keys("PageDown", "F3");
        Take(bench, "Set aside").Type("x");
        Assert.Equal("Say it in a few words.", bench.Shell.Message);
        bench.Type("a hair is in it");
        Assert.Equal("Balance with staff, roller and hairspring: set aside: a hair is in it.", bench.Shell.Message);
        Assert.Equal(new PartPlace.SetAside("a hair is in it"), JobOf(bench).PlaceOf("balance"));
        bench.Keys("u");
        Assert.Equal("Taken back: Balance with staff, roller and hairspring: set aside: a hair is in it.", bench.Shell.Message);
        Assert.Equal(new PartPlace.OnMovement(), JobOf(bench).PlaceOf("balance"));
    }

    [Fact]
    public void A_lost_part_is_found_again_where_it_lay()
    {
        using PaperBench bench = new PaperBench().WithJob().To("wash/jars-ready").Keys("F3");
        Typing(bench, "fourth").Keys("Esc");
        Take(bench, "Lost");
        Take(bench, "Found again");
        Assert.Equal(new PartPlace.InTray("B8"), JobOf(bench).PlaceOf("fourth-wheel"));
        Assert.Equal("Fourth wheel with long pivot: in B8.", bench.Shell.Message);
    }

    [Fact]
    public void Another_piece_takes_a_parts_place_and_the_old_one_is_kept()
    {
        using PaperBench bench = new PaperBench().WithJob().To("wash/jars-ready").Keys("F3");
        Typing(bench, "fourth").Keys("Esc");
        Take(bench, "Another piece");
        bench.Keys("1").Type("ten leaves, from the material house");
        Assert.Equal("Fourth wheel with long pivot: another piece, supplied. The old one is kept for the owner.", bench.Shell.Message);
        Assert.Contains("Not the original piece: supplied, ten leaves, from the", bench.Picture(120, 40), StringComparison.Ordinal);
    }

    [Fact]
    public void A_finding_on_a_part_has_its_weight_and_its_sureness()
    {
        using PaperBench bench = new PaperBench().WithJob().To("wash/jars-ready").Keys("F3");
        Typing(bench, "fourth").Keys("Esc");
        Take(bench, "A finding");
        if (bench.Shell.Open is null) Typing(bench, "Something else").Keys("Enter");
        bench.Type("long pivot bent").Keys("2", "2");
        JobEvent.FindingNoted finding = JobOf(bench).Findings[^1].Event;
        Assert.Equal(("fourth-wheel", "long pivot bent", Weight.StopsTheWork, Sureness.Inferred), (finding.Part, finding.What, finding.Weight, finding.Sure));
        Assert.StartsWith("The finding is noted.", bench.Shell.Message, StringComparison.Ordinal);
        Assert.Contains("long pivot bent (stops the work, inferred): to be decided", bench.Picture(), StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_left_out_is_washed_by_itself_and_it_says_through_what()
    {
        using PaperBench bench = new PaperBench().WithJob().To("wash/jars-ready").Keys("F3");
        Typing(bench, "fourth").Keys("Esc");
        Take(bench, "Set aside").Type("under the lens");
        bench.Keys("Esc").To("wash/rinse-tap").Keys("F3");
        Typing(bench, "fourth").Keys("Esc");
        Take(bench, "in the tray");
        bench.Keys("Enter");
        Assert.Contains("Wash it now, by itself  takes up again 'Degrease both baskets", bench.Picture(120, 40), StringComparison.Ordinal);
        Typing(bench, "Wash it now").Keys("Enter");
        Assert.StartsWith("Fourth wheel with long pivot goes by itself through '", bench.Shell.Message, StringComparison.Ordinal);
        Assert.Contains(JobOf(bench).Alone, a => a.Value.Contains("fourth-wheel"));
    }

    [Fact]
    public void A_part_that_no_procedure_names_is_added()
    {
        using PaperBench bench = new PaperBench().WithJob().Keys("PageDown", "F3", "+");
        bench.Type("shim under the cock").Type("A17").Type("two");
        Assert.Equal("'two' is not a number from 1 to 999.", bench.Shell.Message);
        bench.Type("2").Type("0");
        Assert.Equal("Added: shim under the cock, in A17.", bench.Shell.Message);
        Typing(bench, "shim");
        Snapshot.Verify(bench.Picture());
        bench.Keys("Esc", "u");
        Assert.Equal("Taken back: the part shim under the cock.", bench.Shell.Message);
    }

    [Fact]
    public void A_movement_without_compartments_is_a_list_and_a_long_one_says_that_more_follows()
    {
        using PaperBench bench = new();
        StringBuilder text = new("procedure: many\nformat: 1\ntitle: A great many parts\nrevision: 1\ncovers: A movement of many parts.\nsources: [common practice]\nparts:\n");
        for (int i = 1; i <= 300; i++) text.Append($"  - {{part: part-{i}, name: 'Part number {i}', of: [steel]}}\n");
        text.Append("stages:\n  - stage: work\n    title: Work\n    steps:\n      - step: look\n        do: Look at it\n");
        Directory.CreateDirectory(Path.Combine(bench.Path, "procedures"));
        File.WriteAllText(Path.Combine(bench.Path, "procedures", "many.yaml"), text.ToString());
        bench.Restart().WithJob("Q26-002", "many").Keys("PageDown", "F3");
        Snapshot.Verify(bench.Picture());
        bench.Keys("PageDown", "PageDown");
        Assert.Equal("part-21", Model(bench).Marked);
        Snapshot.Verify(bench.Picture(), "further");
    }

    [Fact]
    public void A_bath_says_what_goes_in_and_why_something_is_left_out()
    {
        using PaperBench bench = new PaperBench().WithJob().To("wash/degrease");
        ServiceRunner.Session.OpenJob job = bench.Run.Job;
        bench.Session.Act(job, new JobAction.MovePart("fourth-wheel", new PartPlace.SetAside("under the lens")));
        bench.Session.Act(job, new JobAction.MovePart("click", new PartPlace.SentOut("the wheel cutter")));
        Snapshot.Verify(bench.Picture());
        Assert.Contains(" 54 parts without 2. Go on to start the clock.", ServiceRunner.Files.Sentences.SpokenOffer.Text(bench.Run.Offer, bench.Job, bench.Session.Workshop, bench.Session.Now), StringComparison.Ordinal);
        bench.Keys("F6");
        Assert.Contains("54 parts without 2 into Degreasing jar", ServiceRunner.Screens.Large.LargeWords.Of(bench.Run, bench.Shell).Going, StringComparison.Ordinal);
        bench.Keys("F6", "PageDown", "F3");
        Snapshot.Verify(bench.Picture(), "basket");
    }

    [Fact]
    public void A_repair_has_a_tray_of_its_own_and_its_part_waits_in_it()
    {
        using PaperBench bench = new PaperBench().WithJob().To("wash/jars-ready");
        ServiceRunner.Session.OpenJob job = bench.Run.Job;
        bench.Session.Act(job, new JobAction.NoteFinding("balance", "balance", "upper pivot broken", Weight.Service, Sureness.Seen));
        Assert.True(bench.Session.BringIn(job, job.State.Findings[^1].Event.Finding, "balance", bench.Session.Library.Read("staff-replacement")!).IsDone);
        bench.Keys("F3");
        Typing(bench, "balance with").Keys("Esc");
        Snapshot.Verify(bench.Picture(120, 40));
    }

    [Fact]
    public void The_page_of_the_signs_has_each_of_them()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "parts.md"));
        foreach (PartStanding standing in Enum.GetValues<PartStanding>())
            Assert.Contains($"| `{TrayPicture.Sign(standing)}` | {ServiceRunner.Files.Sentences.PartWords.Of(standing)} |", page, StringComparison.Ordinal);
    }
}
