using System.Text;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Tests.Yaml;

public sealed class TextFileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("text-file-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_file_of_two_hundred_megabytes_is_refused_by_its_size()
    {
        string path = Path.Combine(_folder, "big.yaml");
        using (FileStream file = File.Create(path)) file.SetLength(200L * 1024 * 1024);
        Assert.Equal("big.yaml: error file-too-big: the file has 200.0 MB; at most 4 MB are read\n    Is this the file you meant? A long procedure can be parted into several that are taken in.\n", Refused(path));
    }

    [Fact]
    public void One_byte_over_four_megabytes_is_refused_and_four_are_read()
    {
        string path = Path.Combine(_folder, "edge.yaml");
        File.WriteAllBytes(path, Enumerable.Repeat((byte)'#', TextFile.MostBytes).ToArray());
        List<Diagnostic> found = [];
        Assert.Equal(TextFile.MostBytes, TextFile.Read(path, "edge.yaml", found)!.Length);
        File.AppendAllText(path, "#");
        Assert.Contains("error file-too-big: the file has 4.1 MB", Refused(path), StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_file_and_a_folder_are_told_apart()
    {
        Assert.Equal("gone.yaml: error cannot-open: there is no such file\n    Look at how the name is written.\n", Refused(Path.Combine(_folder, "gone.yaml")));
        string inner = Directory.CreateDirectory(Path.Combine(_folder, "inner.yaml")).FullName;
        Assert.Equal("inner.yaml: error cannot-open: this is a folder and not a file\n", Refused(inner));
    }

    [Theory]
    [InlineData("89504E470D0A1A0A0000", "this is a picture (PNG) and not a text")]
    [InlineData("FFD8FFE000104A464946", "this is a picture (JPEG) and not a text")]
    [InlineData("474946383961", "this is a picture (GIF) and not a text")]
    [InlineData("7F454C46000000", "this is a binary file and not a text")]
    [InlineData("FFFE700072006F00", "the text is UTF-16")]
    [InlineData("FEFF00700072006F", "the text is UTF-16")]
    [InlineData("", "the file is empty")]
    [InlineData("EFBBBF", "the file is empty")]
    [InlineData("610A62C3A4E9", "the text is not UTF-8: the first character that is not stands in line 2, column 3")]
    [InlineData("C3", "the text is not UTF-8: the first character that is not stands in line 1, column 1")]
    public void Bytes_that_are_no_text_get_a_sentence(string hex, string sentence)
    {
        List<Diagnostic> found = [];
        Assert.Null(TextFile.Decode(Convert.FromHexString(hex), "x.yaml", found));
        Assert.Equal(sentence, Assert.Single(found).Message);
    }

    [Fact]
    public void A_byte_order_mark_is_left_out()
    {
        List<Diagnostic> found = [];
        Assert.Equal("a: °", TextFile.Decode([0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes("a: °")], "x.yaml", found));
        Assert.Empty(found);
    }

    private static string Refused(string path)
    {
        List<Diagnostic> found = [];
        Assert.Null(TextFile.Read(path, Path.GetFileName(path), found));
        return DiagnosticText.Line(Assert.Single(found));
    }
}
