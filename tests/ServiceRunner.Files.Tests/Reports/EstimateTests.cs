using System.Xml.Linq;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Reports.Estimates;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Files.Tests.Reports;

/// <summary>The condition of a piece and its estimate, word for word.</summary>
public class EstimateTests
{
    private static readonly DateTimeOffset Morning = new(2026, 3, 2, 9, 0, 0, TimeSpan.FromHours(1));

    private static readonly DateOnly Later = new(2026, 3, 9);

    private static Placed<string> P(string id) => new(id, default);

    private static Estimate Of(IEnumerable<IReadOnlyList<JobEvent>> acts, string name = "Quay Lane Watch and Clock Workshop", string owner = "M. Halvorsen", string part = "Fourth wheel") =>
        new(Fold.All("01JOB", acts.Select((events, i) => new LogEntry(i + 1, $"a{i}", "IV", new Moment(Morning.AddMinutes(i), "b", TimeSpan.FromMinutes(i)), events)))!,
            Plan(part), new Workshop { Id = P("w"), Name = name, People = [], Currency = "EUR" }, owner, Later);

    private static Plan Plan(string part) => new(
    [
        new Joined("1", new Procedure { Id = P("service"), Title = "Full service", Revision = "1", Parts = [new Part { Id = P("fourth-wheel"), Name = part, Compartment = "A1" }, new Part { Id = P("dial"), Name = "Dial", Compartment = "A2" }], Stages = [] }),
        new Joined("2", new Procedure { Id = P("new-wheel"), Title = "Replace a wheel", Revision = "1", Parts = [], Stages = [new Stage(P("work"), "Work", [], [new Step { Id = P("out"), Do = "Take the old wheel out" }])] }, "fourth-wheel"),
    ]);

    private static List<IReadOnlyList<JobEvent>> Acts(string t = "", string number = "Q26-101") =>
    [
        [new JobEvent.Opened(number, t.Length > 0 ? t : "Wrist watch, silvered dial, steel case", "01OWNER"), new JobEvent.ProcedureJoined("1", "service", "Full service", "1", [], "")],
        [new JobEvent.IntakeNoted(t.Length > 0 ? t : "204 417", "leather strap", null, TypedNumber.Of(380), t.Length > 0 ? t : "EUR", t.Length > 0 ? t : "glass cracked, does not go although it winds")],
        [new JobEvent.FindingNoted("f1", "fourth-wheel", "fourth-wheel", t.Length > 0 ? t : "lower pivot bent", Weight.StopsTheWork, Sureness.Seen)],
        [new JobEvent.FindingNoted("f2", t.Length > 0 ? t : "escape-upper-jewel", "", t.Length > 0 ? t : "cracked", Weight.Service, Sureness.Inferred)],
        [new JobEvent.FindingNoted("f3", "dial", "dial", "hairline at 4", Weight.Service, Sureness.Seen)],
        [new JobEvent.FindingNoted("f4", "case", "", t.Length > 0 ? t : "an earlier repairer's marks", Weight.Note, Sureness.Seen)],
        [new JobEvent.ProcedureJoined("2", "new-wheel", "Replace a wheel", "1", [], ""), new JobEvent.RepairJoined("2", "f1", "fourth-wheel"), new JobEvent.FindingDecided("f1", Verdict.Replace, "")],
        [new JobEvent.FindingPriced("f1", TypedNumber.Of(95), TimeSpan.FromMinutes(60), "EUR")],
        [new JobEvent.FindingDecided("f2", Verdict.SendOut, t.Length > 0 ? t : "the jeweller")],
        [new JobEvent.FindingPriced("f2", TypedNumber.Of(60.5m), null, "EUR")],
        [new JobEvent.FindingDecided("f3", Verdict.AskOwner, "")],
    ];

    private static IReadOnlyList<JobEvent> Told => [new JobEvent.EstimateGiven([new("f1", TypedNumber.Of(95), TimeSpan.FromMinutes(60)), new("f2", TypedNumber.Of(60.5m), null), new("f3", null, null)], "EUR")];

    [Fact]
    public void An_estimate_as_text() => Snapshot.Verify(new TextEstimate(Of([.. Acts(), Told])).ToString());

    [Fact]
    public void An_estimate_as_a_page() => Snapshot.Verify(new HtmlEstimate([Of([.. Acts(), Told])]).ToString());

    [Fact]
    public void What_came_later_changes_nothing_of_what_was_told()
    {
        string told = new TextEstimate(Of([.. Acts(), Told])).ToString();
        List<IReadOnlyList<JobEvent>> later =
        [
            .. Acts(), Told,
            [new JobEvent.FindingPriced("f1", TypedNumber.Of(500), null, "CHF")],
            [new JobEvent.FindingDecided("f2", Verdict.Accept, "")],
            [new JobEvent.FindingWeighed("f4", Weight.StopsTheWork, Sureness.Seen)],
            [new JobEvent.FindingNoted("f5", "dial", "dial", "repainted", Weight.Service, Sureness.Seen)],
            [new JobEvent.IntakeNoted("", "", null, null, "", "something else")],
            [new JobEvent.TakenBack(5)],
        ];
        Assert.Equal(told, new TextEstimate(Of(later)).ToString());
    }

    [Fact]
    public void What_was_not_told_yet_is_a_draft_of_today()
    {
        string draft = new TextEstimate(Of(Acts())).ToString(), told = new TextEstimate(Of([.. Acts(), Told])).ToString();
        Assert.StartsWith("Quay Lane Watch and Clock Workshop\nDraft of an estimate Q26-101, Mon 9 March 2026\nThis is a draft: it was not given to the owner yet, and may change.\n\nPiece:", draft, StringComparison.Ordinal);
        Assert.StartsWith("Quay Lane Watch and Clock Workshop\nEstimate Q26-101, Mon 2 March 2026\n\nPiece:", told, StringComparison.Ordinal);
        Assert.Equal(told[told.IndexOf("Piece:", StringComparison.Ordinal)..], draft[draft.IndexOf("Piece:", StringComparison.Ordinal)..]);
        Assert.Contains("This is a draft: it was not given to the owner yet, and may change.", XDocument.Parse(new HtmlEstimate([Of(Acts())]).ToString()).Root!.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_agreed_before_is_named_beside_what_is_still_to_be_decided()
    {
        List<IReadOnlyList<JobEvent>> acts =
        [
            .. Acts(), Told, [new JobEvent.OwnerAnswered(["f1"], ["f2"], Means.Telephone, new DateOnly(2026, 3, 2), "")],
            [new JobEvent.EstimateGiven([new("f3", TypedNumber.Of(40), null)], "EUR")],
        ];
        string text = new TextEstimate(Of(acts)).ToString();
        Assert.Contains("Total                                                                  40.00 EUR\nAgreed before, and not in the total: Fourth wheel: lower pivot bent, 95.00 EUR.\nAgreed limit of cost: 380 EUR.\n", text, StringComparison.Ordinal);
        Assert.Contains("Agreed before, and not in the total: Fourth wheel: lower pivot bent, 95.00 EUR.", XDocument.Parse(new HtmlEstimate([Of(acts)]).ToString()).Root!.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void A_piece_without_findings_has_nothing_to_be_decided()
    {
        Estimate bare = Of([[new JobEvent.Opened("Q26-101", "Wrist watch", "")]], owner: "");
        foreach (string text in new[] { new TextEstimate(bare).ToString(), XDocument.Parse(new HtmlEstimate([bare]).ToString()).Root!.Value })
        {
            Assert.Contains("Nothing was found to be wrong or unusual so far.", text, StringComparison.Ordinal);
            Assert.Contains("Nothing waits for the owner's decision.", text, StringComparison.Ordinal);
            foreach (string word in new[] { "Total", "Owner:", "Serial", "On arrival", "limit", "Also seen" }) Assert.DoesNotContain(word, text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("</style><script>alert(1)</script>")]
    [InlineData("\"><img src=x onerror=alert(1)>")]
    [InlineData("a\u202Eb\u0007\e[2J\r\nc")]
    [InlineData("\uD800\uFFFE")]
    public void Nothing_typed_breaks_out_of_a_page_or_moves_a_cursor(string t)
    {
        string page = new HtmlEstimate([Of([.. Acts(t, t), Told], t, t, t)]).ToString();
        Assert.Equal(Skeleton(new HtmlEstimate([Of([.. Acts("x", "x"), Told])]).ToString()), Skeleton(page));
        Assert.DoesNotContain(page, c => (char.IsControl(c) && c != '\n') || c == '\u202E');
        Assert.DoesNotContain(new TextEstimate(Of([.. Acts(t, t), Told], t, t, t)).ToString(), c => char.IsControl(c) && c != '\n');
        Assert.StartsWith("default-src 'none'; style-src 'sha256-", XDocument.Parse(page).Descendants().Attributes("content").First(a => a.Parent!.Attribute("http-equiv") is not null).Value, StringComparison.Ordinal);
    }

    private static string[] Skeleton(string page) =>
        [.. XDocument.Parse(page).Descendants().Select(e => $"{e.Name.LocalName} {string.Join(',', e.Attributes().Select(a => a.Name.LocalName))}")];
}
