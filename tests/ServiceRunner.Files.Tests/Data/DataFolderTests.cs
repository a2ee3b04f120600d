using ServiceRunner.Files.Data;

namespace ServiceRunner.Files.Tests.Data;

public sealed class DataFolderTests : IDisposable
{
    private readonly string _path = Path.Combine(Path.GetTempPath(), "data-" + Guid.NewGuid().ToString("N"));

    private DataFolder Made() => Assert.IsType<FolderReady>(DataFolder.Create(_path)).Folder;

    [Fact]
    public void A_new_folder_has_a_bench_of_its_own_and_is_found_again()
    {
        DataFolder made = Made();
        Assert.Matches("^[0-9A-HJKMNP-TV-Z]{26}$", made.Bench);
        Assert.Equal(made.Bench, Assert.IsType<FolderReady>(DataFolder.Open(_path)).Folder.Bench);
        Assert.Equal(made.Bench, Made().Bench);
    }

    [Fact]
    public void A_folder_and_what_is_in_it_are_for_its_owner_only()
    {
        if (OperatingSystem.IsWindows()) return;
        Directory.CreateDirectory(_path);
        DataFolder folder = Made();
        new KeptTexts(folder).Put("x"u8);
        Assert.Null(new Owners(folder).Save("A1", new Owner("n", "c")));
        Assert.IsType<Files.Journal.Opened>(Files.Journal.JobLog.Open(folder, Files.Journal.OpenMode.Own, (_, _) => null)).Log.Dispose();
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(_path));
        foreach (string file in Directory.GetFiles(_path, "*", SearchOption.AllDirectories))
            Assert.Equal((file, UnixFileMode.UserRead | UnixFileMode.UserWrite), (file, File.GetUnixFileMode(file)));
    }

    [Fact]
    public void A_folder_whose_making_was_interrupted_is_made_whole()
    {
        Directory.CreateDirectory(_path);
        File.WriteAllText(Path.Combine(_path, DataFolder.Marker + ".part"), "1\nben");
        Made();
        Assert.Equal([Path.Combine(_path, DataFolder.Marker)], Directory.GetFiles(_path));
    }

    [Theory]
    [InlineData("2\nbench X\n")]
    [InlineData("99")]
    public void A_later_format_is_refused(string marker)
    {
        Made();
        File.WriteAllText(Path.Combine(_path, DataFolder.Marker), marker);
        Assert.IsType<FormatFromTheFuture>(Assert.IsType<FolderRefused>(DataFolder.Open(_path)).Fault);
    }

    [Theory]
    [InlineData("")]
    [InlineData("x\n")]
    [InlineData("1\n")]
    public void A_marker_that_cannot_be_read_is_damage(string marker)
    {
        Made();
        File.WriteAllText(Path.Combine(_path, DataFolder.Marker), marker);
        Assert.Equal(new FolderRefused(new Damaged(DataFolder.Marker, 0, Damage.NotALine)), DataFolder.Open(_path));
    }

    [Fact]
    public void A_kept_text_is_found_by_its_hash_and_a_changed_one_is_told()
    {
        KeptTexts texts = new(Made());
        string hash = Assert.IsType<KeptText>(texts.Put("steps: []"u8)).Hash;
        Assert.Equal(KeptTexts.HashOf("steps: []"u8), hash);
        Assert.Equal("steps: []"u8.ToArray(), Assert.IsType<KeptBytes>(texts.Get(hash)).Bytes);
        string file = Path.Combine(_path, "kept", hash);
        DateTime written = File.GetLastWriteTimeUtc(file);
        Assert.Equal(new KeptText(hash), texts.Put("steps: []"u8));
        Assert.Equal(written, File.GetLastWriteTimeUtc(file));
        File.WriteAllText(file, "steps: [x]");
        Assert.Equal(new KeptUnreadable(new KeptTextChanged(hash)), texts.Get(hash));
        Assert.Equal(new KeptText(hash), texts.Put("steps: []"u8));
        Assert.True(texts.Has(hash));
        Assert.Equal(new KeptUnreadable(new KeptTextMissing("../" + DataFolder.Marker)), texts.Get("../" + DataFolder.Marker));
        Assert.False(texts.Has(KeptTexts.HashOf("other"u8)));
        Assert.Single(Directory.GetFiles(Path.Combine(_path, "kept")));
    }

    [Fact]
    public void An_owner_is_saved_changed_and_erased_for_good()
    {
        Owners owners = new(Made());
        Assert.Empty(owners.Ids());
        Assert.Null(owners.Erase("A1"));
        Assert.Null(owners.Save("A1", new Owner("A. Fabricated", "12 Any Lane")));
        Assert.Null(owners.Save("A1", new Owner("A. Fabricated\tä", "13 Any Lane")));
        Assert.Null(owners.Save("B2", new Owner("B", "")));
        Assert.Equal(new Owner("A. Fabricated\tä", "13 Any Lane"), owners.Find("A1"));
        Assert.Equal(["A1", "B2"], owners.Ids());
        Assert.Null(owners.Erase("A1"));
        Assert.Null(owners.Find("A1"));
        Assert.Equal(["B2"], owners.Ids());
        Assert.DoesNotContain(Directory.GetFiles(_path, "*", SearchOption.AllDirectories), f => File.ReadAllText(f).Contains("Fabricated", StringComparison.Ordinal));
    }

    [Fact]
    public void An_owner_has_lines_of_contact_and_a_file_of_the_first_version_is_still_read()
    {
        Owners owners = new(Made());
        Owner owner = new("A. Fabricated", "by the neighbour") { Telephone = "555 0199", Mail = "a@example.org", Address = "12 Any Lane" };
        Assert.Null(owners.Save("A1", owner));
        Assert.Equal(owner, owners.Find("A1"));
        Assert.Equal(["555 0199", "a@example.org", "12 Any Lane", "by the neighbour"], owner.Lines);
        File.WriteAllText(Path.Combine(_path, "owners", "B2.json"), """{"v":1,"name":"B. Made","contact":"12 Any Lane"}""");
        Assert.Equal(new Owner("B. Made", "12 Any Lane"), owners.Find("B2"));
    }

    [Fact]
    public void An_owners_id_never_becomes_a_path()
    {
        Owners owners = new(Made());
        Assert.Null(owners.Find("../" + DataFolder.Marker));
        Assert.Null(owners.Erase("../" + DataFolder.Marker));
        Assert.Throws<ArgumentException>(() => owners.Save("../x", new Owner("", "")));
        Assert.True(File.Exists(Path.Combine(_path, DataFolder.Marker)));
    }

    [Fact]
    public void A_file_of_an_owner_that_cannot_be_read_is_no_owner()
    {
        Owners owners = new(Made());
        Assert.Null(owners.Save("A1", new Owner("n", "c")));
        File.WriteAllText(Path.Combine(_path, "owners", "A1.json"), "[1,2");
        Assert.Null(owners.Find("A1"));
        File.WriteAllText(Path.Combine(_path, "owners", "A1.json"), "[1,2]");
        Assert.Null(owners.Find("A1"));
    }

    public void Dispose()
    {
        if (Directory.Exists(_path)) Directory.Delete(_path, recursive: true);
    }
}
