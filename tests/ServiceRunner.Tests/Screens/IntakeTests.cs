using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Data;
using ServiceRunner.Screens.Intake;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens;

/// <summary>Booking in at the counter, and what was noted there looked at and changed later.</summary>
public class IntakeTests
{
    private static PaperBench Begun(string what = "Wrist watch, blue dial") => new PaperBench().Keys("n").Type(what);

    private static PaperBench Field(PaperBench bench, string name, string text)
    {
        IntakeModel intake = Assert.IsType<IntakeModel>(bench.Shell.Screen);
        for (int i = 0; i < 20 && intake.Fields[intake.Marked].Name != name; i++) bench.Keys(intake.Fields.Select(f => f.Name).ToList().IndexOf(name) > intake.Marked ? "Down" : "Up");
        return bench.Keys("Enter").Type(text);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void A_full_intake(int width, int height)
    {
        using PaperBench bench = Begun("Wrist watch, blue dial, a gilt case worn through at the lugs, with a name engraved on its back that cannot be read");
        bench.Keys("Enter", "1");
        foreach ((string name, string text) in new[] { ("Owner", "M. Halvorsen"), ("Telephone", "555 0101"), ("Mail", "m@example.org"), ("Serial", "204 417"), ("Came with", "strap"), ("On arrival", "glass cracked"), ("Promised", "+2"), ("Cost limit", "380,50 eur") })
            Field(bench, name, text);
        Field(bench, "What it is", bench.Shell.Screen is IntakeModel m ? m.Draft.What : "").Keys("Up");
        Snapshot.Verify(bench.Picture(width, height), $"{width}x{height}");
    }

    [Fact]
    public void A_new_intake_asks_first_what_it_is()
    {
        using PaperBench bench = new PaperBench().Keys("n");
        Snapshot.Verify(bench.Picture());
        Assert.Equal("What it is, Q26-001", bench.Shell.Open!.Label);
    }

    [Fact]
    public void The_least_is_what_it_is_and_the_procedure_is_asked_for()
    {
        using PaperBench bench = Begun().Keys("b");
        Snapshot.Verify(bench.Picture());
        bench.Keys("1");
        Assert.Equal("Q26-001 is booked in. t writes its receipt and label.", bench.Shell.Message);
        Assert.Equal(("Wrist watch, blue dial", "", Intake.None), (bench.Job.What, bench.Job.Owner, bench.Job.Intake));
        Assert.Single(bench.Job.Log);
        bench.Keys("Esc");
        Assert.Same(bench.Shell.Board, bench.Shell.Screen);
    }

    [Fact]
    public void Without_what_it_is_nothing_is_booked()
    {
        using PaperBench bench = new PaperBench().Keys("n");
        bench.Shell.Leave("");
        bench.Keys("b");
        Assert.Equal("Say what it is first: the first line.", bench.Shell.Message);
        Assert.Empty(bench.Session.AllJobs());
    }

    [Fact]
    public void All_of_it_is_one_entry_and_the_owner_lies_beside_the_log()
    {
        using PaperBench bench = Begun();
        Field(bench, "Owner", "M. Halvorsen");
        Field(bench, "Telephone", "555 0101");
        Field(bench, "Promised", "20 Mar");
        Field(bench, "Cost limit", "380,50");
        Field(bench, "Serial", "204 417");
        bench.Keys("b", "1");
        LogEntry entry = Assert.Single(bench.Job.Log);
        TypedNumber.Read("380,50", out TypedNumber limit);
        Assert.Equal(new JobEvent.IntakeNoted("204 417", "", new DateOnly(2026, 3, 20), limit, "EUR", ""), entry.Events.OfType<JobEvent.IntakeNoted>().Single());
        Assert.Equal(new Owner("M. Halvorsen") { Telephone = "555 0101" }, bench.Session.Owners.Find(bench.Job.Owner));
        Assert.DoesNotContain(Directory.GetFiles(bench.Path, "journal-*"), f => File.ReadAllText(f).Contains("Halvorsen", StringComparison.Ordinal));
    }

    [Fact]
    public void A_started_intake_is_kept_and_offered_again()
    {
        using PaperBench bench = Begun();
        Field(bench, "Serial", "204 417");
        bench.Keys("Esc", "n");
        Assert.Equal("This intake was begun and is not booked in yet; x empties it.", bench.Shell.Message);
        Assert.Equal("204 417", Assert.IsType<IntakeModel>(bench.Shell.Screen).Draft.Serial);
        bench.Keys("x");
        Assert.True(((IntakeModel)bench.Shell.Screen).Draft.IsEmpty);
        bench.Keys("Esc", "n");
        Assert.NotNull(bench.Shell.Open);
    }

    [Fact]
    public void A_known_owner_is_offered_and_not_made_twice()
    {
        using PaperBench bench = Begun();
        Field(bench, "Owner", "M. Halvorsen");
        Field(bench, "Telephone", "555 0101");
        bench.Keys("b", "1");
        string owner = bench.Job.Owner;
        bench.Keys("F2", "n").Type("Carriage clock");
        Field(bench, "Owner", "halvor");
        Snapshot.Verify(bench.Picture());
        bench.Keys("1", "b", "1");
        Assert.Equal(owner, bench.Job.Owner);
        Assert.Single(Directory.GetFiles(System.IO.Path.Combine(bench.Path, "owners")));
    }

    [Fact]
    public void Somebody_else_of_the_same_name_can_be_made()
    {
        using PaperBench bench = Begun();
        Field(bench, "Owner", "M. Halvorsen");
        bench.Keys("b", "1", "F2", "n").Type("Carriage clock");
        Field(bench, "Owner", "M. Halvorsen");
        bench.Keys("2", "b", "1");
        Assert.Equal(2, Directory.GetFiles(System.IO.Path.Combine(bench.Path, "owners")).Length);
    }

    [Fact]
    public void In_a_job_each_change_is_written_down_at_once()
    {
        using PaperBench bench = new PaperBench().WithJob().Keys("i");
        Field(bench, "Promised", "2026-03-20");
        Assert.Equal("Written down: promised.", bench.Shell.Message);
        Field(bench, "Promised", "2026-03-27");
        Field(bench, "Owner", "M. Halvorsen");
        Field(bench, "Mail", "m@example.org");
        Assert.Equal("Kept beside the log: mail.", bench.Shell.Message);
        bench.Keys("Esc");
        Assert.Equal(new DateOnly(2026, 3, 27), bench.Job.Intake.Promised);
        Assert.Equal(new Owner("M. Halvorsen") { Mail = "m@example.org" }, bench.Session.Owners.Find(bench.Job.Owner));
        Assert.Equal(4, bench.Job.Log.Count);
        bench.Keys("u");
        Assert.Equal("Taken back: a change of the owner.", bench.Shell.Message);
    }

    [Fact]
    public void What_was_booked_cannot_be_changed_and_a_job_that_is_over_only_its_owners_contact()
    {
        using PaperBench bench = new PaperBench().WithJob().Keys("i", "Enter");
        Assert.Equal("That stays as it was booked in.", bench.Shell.Message);
        Field(bench, "Owner", "M. Halvorsen");
        bench.Keys("Esc", "x", "1").Type("no part to be had").Keys("i");
        Field(bench, "Telephone", "555 0102");
        Assert.Equal("555 0102", bench.Session.Owners.Find(bench.Session.AllJobs()[0].Owner)!.Telephone);
        bench.Keys("Down", "Down", "Enter");
        Assert.Equal("This job is returned unrepaired: nothing more can be done in it.", bench.Shell.Message);
    }

    [Theory]
    [InlineData("Promised", "3/4", "'3/4' is not a day. As 2026-03-20, 20 Mar, Monday, +14 days or +3 weeks.")]
    [InlineData("Promised", "2026-03-01", "Sun 1 March 2026 is past.")]
    [InlineData("Cost limit", "-1", "A figure below nought makes no sense here.")]
    [InlineData("Cost limit", "1,234", "'1,234' can be read in two ways: type it with a point, as 1.234, or without one.")]
    [InlineData("Cost limit", "as usual", "'as usual' is not a number. Type the figure alone, as 380 or 380.50.")]
    public void Bad_input_keeps_the_question_open_and_says_what_to_do(string field, string text, string sentence)
    {
        using PaperBench bench = Begun();
        Field(bench, field, text);
        Assert.Equal(sentence, bench.Shell.Message);
        Assert.Equal(text, bench.Shell.Open!.Start);
    }

    [Fact]
    public void A_number_is_given_once()
    {
        using PaperBench bench = new PaperBench().WithJob("Q26-001").Keys("F2", "n").Type("x");
        Field(bench, "Number", "Q26-001");
        Assert.Equal("There is a job Q26-001 already.", bench.Shell.Message);
        bench.Type("");
        Assert.Null(bench.Shell.Open);
        bench.Keys("b", "1");
        Assert.Equal("Q26-002", bench.Job.Number);
    }

    [Fact]
    public void Full_services_stand_before_repairs()
    {
        using PaperBench bench = Begun().Keys("Enter");
        Assert.Equal(["Wrist movement, hand-wound, 17 jewels"], Assert.IsType<PickModel>(bench.Shell.Screen).Matching.Take(1).Select(c => c.Text));
        Assert.Equal(bench.Session.Library.List().Where(e => !e.ToBeTakenIn).OrderBy(e => e.IsRepair).Select(e => e.Title), ((PickModel)bench.Shell.Screen).Matching.Select(c => c.Text));
        foreach (char c in "riveted") bench.Keys(c.ToString());
        bench.Keys("Enter");
        Assert.Equal("Replace a balance staff", Assert.IsType<IntakeModel>(bench.Shell.Screen).Draft.Procedure.Title);
    }

    [Fact]
    public void Receipt_and_label_are_written_and_where_is_said()
    {
        using PaperBench bench = Begun();
        Field(bench, "Owner", "M. Halvorsen");
        bench.Keys("b", "1", "t");
        string receipt = System.IO.Path.Combine(bench.Path, "printed", "Q26-001-receipt.html");
        Assert.Equal($"Receipt and label are written, to be opened in a browser and printed: {receipt}, and the label beside it.", bench.Shell.Message);
        Assert.Contains("M. Halvorsen", File.ReadAllText(receipt), StringComparison.Ordinal);
        Assert.Contains("Q26-001", File.ReadAllText(System.IO.Path.Combine(bench.Path, "printed", "Q26-001-label.html")), StringComparison.Ordinal);
        bench.Keys("i", "t");
        Assert.StartsWith("Receipt and label are written", bench.Shell.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_answer_is_changed_and_what_it_does_to_the_steps_is_said_before()
    {
        using PaperBench bench = new PaperBench().WithJob().Keys("Enter", "w");
        Snapshot.Verify(bench.Picture(), "answers");
        List<string> asked = [.. ((PickModel)bench.Shell.Screen).Matching.Select(c => c.Text)];
        bench.Keys($"{asked.FindIndex(a => a.StartsWith("Cleaning", StringComparison.Ordinal)) + 1}");
        Snapshot.Verify(bench.Picture(), "effect");
        string before = bench.Session.Board()[0].Total.ToString(System.Globalization.CultureInfo.InvariantCulture);
        bench.Keys("1");
        Assert.StartsWith("Changed to ", bench.Shell.Message, StringComparison.Ordinal);
        Assert.NotEqual(before, bench.Session.Board()[0].Total.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }
}
