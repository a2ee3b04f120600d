using System.Xml.Linq;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Reports;

namespace ServiceRunner.Files.Tests.Reports;

/// <summary>Everything that can be typed is hostile here: the page stays well-formed, and no element or attribute comes from it.</summary>
public class HtmlReportTests
{
    private const string Key = "zzz";

    private static readonly string[] Hostile =
    [
        "</style><script>alert(1)</script>", "\"><img src=x onerror=alert(1)>", "' onload='x", "]]>", "<![CDATA[", "<!--", "-->", "&lt;b&gt;&amp;&#60;", "{{x}} {0}",
        "a\u202Eb\u2066c\u200Fd", "\0\u0001\e[2J\u0007", "line\r\nline\u2028line", "\uD800", "\uDC00x", "\uFFFE\uFFFF", "</title></head><body>", "javascript:alert(1)", new string('w', 5000),
        "<svg onload=x>", "</text></svg><a href=\"http://x\">",
    ];

    [Fact]
    public void Nothing_typed_becomes_markup()
    {
        string[] plain = [.. Skeleton(Page("plain"))];
        Assert.Contains("svg", string.Join(' ', plain), StringComparison.Ordinal);
        foreach (string hostile in Hostile)
        {
            string page = Page(hostile);
            Assert.Equal(plain, Skeleton(page));
            Assert.DoesNotContain(page, c => (char.IsControl(c) && c != '\n') || c is '\u202E' or '\u2066' or '\u200F' or '\u2028');
            Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public void Pieces_put_together_at_random_become_no_markup_either()
    {
        string[] plain = [.. Skeleton(Page("plain"))];
        for (int seed = 0; seed < 150; seed++)
        {
            Random random = new(seed);
            string text = "x" + string.Concat(Enumerable.Range(0, random.Next(1, 6)).Select(_ => Hostile[random.Next(Hostile.Length)] is var h ? h[random.Next(h.Length)..] : ""));
            Assert.True(plain.SequenceEqual(Skeleton(Page(text))), $"seed {seed}");
        }
    }

    [Fact]
    public void What_was_typed_can_be_read_on_the_page() =>
        Assert.Contains(XDocument.Parse(Page("<b>R & D</b>")).Descendants(), e => e.Name.LocalName == "td" && e.Value == "<b>R & D</b>");

    [Fact]
    public void The_page_may_run_and_load_nothing()
    {
        XDocument page = XDocument.Parse(Page("plain"));
        string policy = page.Descendants().Single(e => (string?)e.Attribute("http-equiv") == "Content-Security-Policy").Attribute("content")!.Value;
        Assert.StartsWith("default-src 'none'; style-src 'sha256-", policy, StringComparison.Ordinal);
        string[] loading = ["src", "href", "style", "srcset", "action", "data"];
        Assert.DoesNotContain(page.Descendants().Attributes(), a => loading.Contains(a.Name.LocalName) || a.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
        string sheet = page.Descendants().Single(e => e.Name.LocalName == "style").Value;
        Assert.Contains(Convert.ToBase64String(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(sheet))), policy, StringComparison.Ordinal);
        Assert.DoesNotContain("url(", sheet, StringComparison.Ordinal);
    }

    [Fact]
    public void The_map_tells_by_shape_what_became_of_a_point()
    {
        XElement[] drawings = [.. XDocument.Parse(Page("plain")).Descendants().Where(e => e.Name.LocalName == "figure")];
        Assert.Equal(2, drawings.Length);
        XElement train = drawings[0];
        Assert.Equal(["1", "2"], train.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value));
        Assert.Single(train.Descendants(), e => e.Name.LocalName == "circle" && (string?)e.Attribute("fill") == "#000" && (string?)e.Attribute("r") == "13");
        Assert.Single(train.Descendants(), e => e.Name.LocalName == "circle" && (string?)e.Attribute("fill") == "#fff" && e.Attribute("stroke-dasharray") is null);
        Assert.Single(drawings[1].Descendants(), e => e.Name.LocalName == "path");
    }

    [Fact]
    public void What_was_not_certain_or_entered_afterwards_or_outside_is_marked()
    {
        string page = Page("plain");
        foreach (string mark in new[] { "by the wall clock, across a restart", "entered afterwards", "outside its limits", "under its least", "left open", "passed over" }) Assert.Contains(mark, page, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Skeleton(string page) =>
        XDocument.Parse(page).Descendants().Select(e => $"{e.Name.LocalName} {string.Join(',', e.Attributes().Select(a => a.Name.LocalName))}");

    private static string Page(string t) => new HtmlReport([Story(t)]).ToString();

    private static Placed<string> P(string id) => new(id, default);

    // A job in which every text that a person or a file can give is the same one.
    private static JobStory Story(string t)
    {
        StepRef step = new("1", Key, 1), other = new("1", "two", 1);
        Moment now = new(new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero), "b", TimeSpan.FromHours(1));
        Window window = new(TimeSpan.FromMinutes(3), TimeSpan.FromMinutes(5), TimeSpan.FromMinutes(8));
        TypedNumber number = TypedNumber.Of(9);
        Procedure procedure = new()
        {
            Id = P(Key), Title = t, Revision = t, Map = new MapSize(20, 20), Asks = [new JobQuestion(P("fact"), t, [t])],
            Parts = [new Part { Id = P("part"), Name = t, Compartment = t }],
            OilingPoints =
            [
                new OilingPoint { Id = P("served"), Name = t, Role = P(t), On = new MapPoint(5, 5, false) },
                new OilingPoint { Id = P("bare"), Name = t, Role = P(t), On = new MapPoint(5, 5, false) },
                new OilingPoint { Id = P("dry"), Name = t, Role = P(OilingPoint.Never), On = new MapPoint(5, 5, true) },
            ],
            Stages = [new Stage(P("stage"), t, [], [new Step { Id = P(Key), Do = t, Oil = [P("served"), P("bare")] }, new Step { Id = P("two"), Do = t }, new Step { Id = P("three"), Do = t }])],
        };
        List<JobEvent> events =
        [
            new JobEvent.Opened(t, t, ""), new JobEvent.ProcedureJoined("1", Key, t, t, [], t), new JobEvent.FactAnswered("fact", t), new JobEvent.Started(),
            new JobEvent.Confirmed(step, t, t), new JobEvent.Examined(step, t, t), new JobEvent.Measured(step, t, number, t, 1, 2), new JobEvent.Felt(step, t, t),
            new JobEvent.Counted(step, t, number, t, null, 2), new JobEvent.EstimateNoted(step, t), new JobEvent.ConsentNoted(step, t), new JobEvent.Witnessed(step, t), new JobEvent.AskLeft(step, t),
            new JobEvent.RateTaken(step, 24, t, number, number, number), new JobEvent.PointServed(step, "served", t, t, t), new JobEvent.StepDone(step, now.Wall), new JobEvent.StepSkipped(other),
            new JobEvent.SoakBegun(step, SoakKind.Bath, t, t, ["part", t], window), new JobEvent.SoakEnded(step, TimeSpan.FromMinutes(1), false),
            new JobEvent.SoakBegun(other, SoakKind.Bath, t, "", [t, t, t, t], window),
            new JobEvent.PartMoved("part", new PartPlace.Replaced(t)), new JobEvent.PartMoved(t, new PartPlace.SetAside(t)), new JobEvent.Marked(step),
            new JobEvent.FindingNoted("f", t, "", t, Weight.Service, Sureness.Inferred), new JobEvent.DeviationNoted(t, step, t, t),
            new JobEvent.FindingDecided("f", Verdict.SendOut, t), new JobEvent.FindingPriced("f", number, null, t), new JobEvent.EstimateGiven([new("f", number, null)], t), new JobEvent.OwnerAnswered(["f"], [], Means.Telephone, new DateOnly(2026, 3, 2), t),
            new JobEvent.ProcedureJoined("2", Key, t, t, [], t), new JobEvent.RepairJoined("2", "f", "part"), new JobEvent.StepDone(new("2", "three", 1), null), new JobEvent.FindingSettled("f", t),
            new JobEvent.Held(HoldFor.Part, t, t, null),
        ];
        Job job = Fold.All("id", [new LogEntry(1, "a", t, now, events)])!;
        Workshop workshop = new() { Id = P("w"), Name = t, People = [new Person(P(t), t, true)] };
        return new JobStory(job, new Plan([new Joined("1", procedure), new Joined("2", procedure with { Map = null }, "part")]), workshop, t, t) { ReadOnlyUpTo = t };
    }
}
