using System.Xml.Linq;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Reports;

namespace ServiceRunner.Files.Tests.Reports;

/// <summary>Kept pictures in the reports: small ones within the page, every other one by its name and hash.</summary>
public class PictureTests
{
    private static byte[] Png(int bytes)
    {
        byte[] png = new byte[bytes];
        byte[] head = [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];
        head.CopyTo(png, 0);
        return png;
    }

    private static JobStory Story(params string[] hashes)
    {
        Moment now = new(new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero), "b", TimeSpan.FromHours(1));
        List<JobEvent> events = [new JobEvent.Opened("Q26-101", "Watch", ""), new JobEvent.FindingNoted("f", "fourth-pivots", "", "bent", Weight.Service, Sureness.Seen)];
        events.AddRange(hashes.Select((h, i) => new JobEvent.PhotoKept(h.StartsWith("job", StringComparison.Ordinal) ? "" : "f", null, $"pivot-{i + 1}.png", h, i == 0 ? "Fourth pivots: bent" : "from the side")));
        return new JobStory(Fold.All("id", [new LogEntry(1, "a", "IV", now, events)])!, new Plan([]), new Workshop { Id = new("w", default), Name = "W", People = [] }, "", "");
    }

    private static XDocument Page(JobStory story, Func<string, byte[]?> picture) => XDocument.Parse(new HtmlReport([story]) { Picture = picture }.ToString());

    private static IEnumerable<XElement> Images(XDocument page) => page.Descendants().Where(e => e.Name.LocalName == "img");

    private static string Policy(XDocument page) => page.Descendants().Single(e => (string?)e.Attribute("http-equiv") == "Content-Security-Policy").Attribute("content")!.Value;

    [Fact]
    public void A_small_picture_stands_within_the_page_and_the_page_may_show_nothing_else()
    {
        byte[] png = Png(100);
        XDocument page = Page(Story("aa", "job-bb"), _ => png);
        XElement[] images = [.. Images(page)];
        Assert.Equal(["pivot-1.png", "pivot-2.png: from the side"], images.Select(i => (string?)i.Attribute("alt")));
        Assert.All(images, i => Assert.Equal($"data:image/png;base64,{Convert.ToBase64String(png)}", (string?)i.Attribute("src")));
        Assert.StartsWith("default-src 'none'; img-src data:; style-src 'sha256-", Policy(page), StringComparison.Ordinal);
        Assert.StartsWith("default-src 'none'; style-src 'sha256-", Policy(Page(Story(), _ => png)), StringComparison.Ordinal);
        Assert.Contains(page.Descendants(), e => e.Name.LocalName == "h2" && e.Value == "Pictures");
    }

    [Fact]
    public void A_picture_that_is_large_missing_or_none_is_told_by_its_name_and_hash()
    {
        foreach (byte[]? bytes in new[] { null, Png(EmbeddedPictures.Each), [1, 2, 3], "<svg onload='x'/>"u8.ToArray() })
        {
            XDocument page = Page(Story("ab12", "cd34"), _ => bytes);
            Assert.Empty(Images(page));
            Assert.Contains("Picture, not shown here: pivot-1.png, ab12", page.Root!.Value, StringComparison.Ordinal);
            Assert.Contains("Picture, not shown here: pivot-2.png: from the side, cd34", page.Root!.Value, StringComparison.Ordinal);
        }
        Assert.Single(Images(Page(Story("ab12"), _ => Png(EmbeddedPictures.Each - 1))));
    }

    [Fact]
    public void A_page_has_pictures_until_it_has_ten_megabytes_of_them()
    {
        JobStory story = Story("1", "2", "3", "4", "5", "6", "7");
        Assert.Equal(5, Images(Page(story, _ => Png(1_900_000))).Count());
        // A smaller one that follows still has its place.
        Assert.Equal(6, Images(Page(story, h => Png(h == "7" ? 400_000 : 1_900_000))).Count());
        HtmlReport report = new([story]) { Picture = _ => Png(1_900_000) };
        Assert.Equal(report.ToString(), report.ToString());
    }

    [Fact]
    public void The_text_names_them()
    {
        string text = new TextReport(Story("ab12", "job-cd34")).ToString();
        Assert.Contains("  Fourth pivots: bent (service, seen; IV, 2026-03-02 09:00)\n      To be decided.\n      Picture: pivot-1.png, kept as ab12.\n", text, StringComparison.Ordinal);
        Assert.Contains("Pictures\n--------\n  pivot-2.png (from the side), kept as job-cd34\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_kept_picture_that_was_changed_is_not_shown()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("pictures-");
        try
        {
            DataFolder data = Assert.IsType<FolderReady>(DataFolder.Create(folder.FullName)).Folder;
            KeptTexts kept = new(data);
            string hash = Assert.IsType<KeptText>(kept.Put(Png(50))).Hash;
            byte[]? Read(string h) => kept.Get(h) is KeptBytes k ? k.Bytes : null;
            Assert.Single(Images(Page(Story(hash), Read)));
            File.WriteAllBytes(Path.Combine(data.Kept, hash), Png(60));
            Assert.Empty(Images(Page(Story(hash), Read)));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
