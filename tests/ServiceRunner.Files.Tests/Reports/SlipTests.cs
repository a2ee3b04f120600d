using System.Xml.Linq;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Reports.Slips;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Files.Tests.Reports;

/// <summary>The owner's receipt and the tray's label, word for word.</summary>
public class SlipTests
{
    private static readonly Intake Noted = new("204 417", "leather strap, box", new DateOnly(2026, 3, 20), TypedNumber.Of(380), "EUR", "glass cracked, a dent in the case back at 8, crown missing, does not go although it winds");

    private static readonly Owner Halvorsen = new("M. Halvorsen") { Telephone = "555 0101", Mail = "m.halvorsen@example.org", Address = "3 Invented Row" };

    private static Slip Slip(Intake? noted, Owner? owner, string what = "Wrist watch, silvered dial, steel case", string number = "Q26-101", string workshop = "Quay Lane Watch and Clock Workshop", string name = "Ilse Varnau")
    {
        Moment now = new(new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.FromHours(1)), "b", TimeSpan.Zero);
        List<JobEvent> events = [new JobEvent.Opened(number, what, owner is null ? "" : "01OWNER")];
        if (noted is { } n) events.Add(new JobEvent.IntakeNoted(n.Serial, n.Accessories, n.Promised, n.CostLimit, n.Currency, n.Condition));
        Job job = Fold.All("01JOB", [new LogEntry(1, "a", "IV", now, events)])!;
        return new Slip(job, new Workshop { Id = new("w", default), Name = workshop, People = [new Person(new("IV", default), name, true)] }, owner);
    }

    [Fact]
    public void A_full_receipt_as_text() => Snapshot.Verify(new TextReceipt(Slip(Noted, Halvorsen)).ToString());

    [Fact]
    public void A_full_receipt_as_a_page() => Snapshot.Verify(new HtmlReceipt([Slip(Noted, Halvorsen)]).ToString());

    [Fact]
    public void A_receipt_never_mentions_what_was_not_given()
    {
        Assert.Equal(
            """
            Quay Lane Watch and Clock Workshop
            Receipt Q26-101, Mon 2 March 2026

            Piece:          Wrist watch, silvered dial, steel case


            Taken in by     ____________________________________  Ilse Varnau


            Handed in by    ____________________________________

            """.ReplaceLineEndings("\n"), new TextReceipt(Slip(null, null)).ToString());
        string page = XDocument.Parse(new HtmlReceipt([Slip(null, null)]).ToString()).Root!.Value;
        foreach (string word in new[] { "Serial", "Came with", "On arrival", "Promised", "Cost limit", "Owner" }) Assert.DoesNotContain(word, page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_without_a_currency_stands_alone() =>
        Assert.Contains("Cost limit:     380\n", new TextReceipt(Slip(Noted with { Currency = "" }, null)).ToString(), StringComparison.Ordinal);

    [Fact]
    public void A_label_as_text()
    {
        Assert.Equal("Q26-101\nWrist watch, silvered dial, steel case\nM. Halvorsen\nPromised Fri 20 March 2026\n", new TextLabel(Slip(Noted, Halvorsen)).ToString());
        Assert.Equal("Q26-101\nWrist watch, silvered dial, steel case\n", new TextLabel(Slip(null, null)).ToString());
    }

    [Fact]
    public void A_label_as_a_page() => Snapshot.Verify(new HtmlLabel([Slip(Noted, Halvorsen)]).ToString());

    [Fact]
    public void A_long_number_gets_smaller_letters()
    {
        foreach ((string number, string size) in new[] { ("Q26-101", "large"), ("QUAY-2026-101", "middle"), ("QUAY-LANE-2026-000101", "small") })
            Assert.Equal(size, (string?)XDocument.Parse(new HtmlLabel([Slip(null, null, number: number)]).ToString()).Descendants().Single(e => e.Name.LocalName == "h1").Attribute("class"));
    }

    [Theory]
    [InlineData("</style><script>alert(1)</script>")]
    [InlineData("\"><img src=x onerror=alert(1)>")]
    [InlineData("]]><!-- &lt;b&gt; -->")]
    [InlineData("a\u202Eb\u0007\e[2J\r\nc")]
    [InlineData("\uD800\uFFFE")]
    [InlineData("")]
    public void Nothing_typed_breaks_out_of_a_page_or_moves_a_cursor(string t)
    {
        Slip plain = Slip(Noted, new Owner("n", "c") { Telephone = "t", Mail = "m", Address = "a" });
        Slip hostile = Slip(new Intake(t, t, Noted.Promised, Noted.CostLimit, t, t), new Owner(t, t) { Telephone = t, Mail = t, Address = t }, t, t, t, t);
        foreach ((string page, string of) in new[] { (new HtmlReceipt([hostile]).ToString(), new HtmlReceipt([plain]).ToString()), (new HtmlLabel([hostile]).ToString(), new HtmlLabel([plain]).ToString()) })
        {
            if (t.Length > 0) Assert.Equal(Skeleton(of), Skeleton(page));
            else Assert.NotEmpty(Skeleton(page));
            Assert.DoesNotContain(page, c => (char.IsControl(c) && c != '\n') || c == '\u202E');
        }
        foreach (string text in new[] { new TextReceipt(hostile).ToString(), new TextLabel(hostile).ToString() })
            Assert.DoesNotContain(text, c => char.IsControl(c) && c != '\n');
    }

    [Fact]
    public void A_page_may_run_and_load_nothing()
    {
        foreach (string page in new[] { new HtmlReceipt([Slip(Noted, Halvorsen)]).ToString(), new HtmlLabel([Slip(Noted, Halvorsen)]).ToString() })
        {
            XDocument x = XDocument.Parse(page);
            string sheet = x.Descendants().Single(e => e.Name.LocalName == "style").Value;
            string policy = x.Descendants().Single(e => (string?)e.Attribute("http-equiv") == "Content-Security-Policy").Attribute("content")!.Value;
            Assert.StartsWith("default-src 'none'; style-src 'sha256-", policy, StringComparison.Ordinal);
            Assert.Contains(Convert.ToBase64String(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(sheet))), policy, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Several_jobs_of_a_number_are_several_sheets() =>
        Assert.Equal(2, XDocument.Parse(new HtmlReceipt([Slip(Noted, Halvorsen), Slip(null, null)]).ToString()).Descendants().Count(e => e.Name.LocalName == "article"));

    private static string[] Skeleton(string page) =>
        [.. XDocument.Parse(page).Descendants().Select(e => $"{e.Name.LocalName} {string.Join(',', e.Attributes().Select(a => a.Name.LocalName))}")];
}
