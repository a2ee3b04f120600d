using ServiceRunner.Files.Data;

namespace ServiceRunner.Files.Tests.Data;

public sealed class PrintedSlipsTests : IDisposable
{
    private readonly string _path = Directory.CreateTempSubdirectory("printed-").FullName;
    private readonly DataFolder _folder;
    private readonly PrintedSlips _slips;

    public PrintedSlipsTests()
    {
        _folder = Assert.IsType<FolderReady>(DataFolder.Create(_path)).Folder;
        _slips = new PrintedSlips(_folder);
    }

    private string[] There => [.. Directory.GetFiles(_folder.Printed).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [Fact]
    public void A_slip_is_written_for_its_owner_only_and_replaced_by_the_next()
    {
        Assert.Equal((Path.Combine(_path, "printed", "Q26-001-receipt.html"), null), _slips.Save("01JOB", "Q26-001", "receipt", "one"));
        Assert.Null(_slips.Save("01JOB", "Q26-001", "receipt", "two").Fault);
        Assert.Equal("two", File.ReadAllText(Path.Combine(_folder.Printed, "Q26-001-receipt.html")));
        Assert.Single(There);
        if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(_folder.Printed, "Q26-001-receipt.html")));
    }

    [Theory]
    [InlineData("../../x")]
    [InlineData("/etc/x")]
    [InlineData(".")]
    [InlineData("")]
    [InlineData("-rf")]
    [InlineData("a b\n\0é")]
    [InlineData("0123456789012345678901234567890123456789012345678901234567890123456789")]
    public void No_number_leaves_the_folder_and_no_two_share_a_file(string number)
    {
        (string path, DataFault? fault) = _slips.Save("01JOBAAAAAAAA", number, "label", "x");
        Assert.Null(fault);
        Assert.Equal(_folder.Printed, Path.GetDirectoryName(path));
        Assert.True(File.Exists(path));
        Assert.NotEqual(path, _slips.Save("01JOBBBBBBBBB", number, "label", "y").Path);
        Assert.False(Path.GetFileName(path).StartsWith('-'));
    }

    [Fact]
    public void Erasing_takes_the_slips_of_the_jobs_and_all_that_the_person_stands_on()
    {
        foreach ((string number, string page) in new[] { ("A", "<p>somebody</p>"), ("B", "<p>J. O&#39;Made</p>"), ("C", "<p>12 Any Lane</p>"), ("D", "<p>other</p>") })
            Assert.Null(_slips.Save("01JOB", number, "receipt", page).Fault);
        Assert.Null(_slips.Erase([("01JOB", "A")], new Owner("J. O'Made") { Address = "12 Any Lane" }));
        Assert.Equal(["D-receipt.html"], There);
        Assert.Null(_slips.Erase([], null));
        Assert.Equal(["D-receipt.html"], There);
    }

    [Fact]
    public void Where_nothing_was_printed_there_is_nothing_to_erase() => Assert.Null(_slips.Erase([("01JOB", "A")], null));

    public void Dispose() => Directory.Delete(_path, recursive: true);
}
