using ServiceRunner.Files.Data;
using ServiceRunner.Pedal;
using ServiceRunner.Tests.EndToEnd;

namespace ServiceRunner.Tests.Pedal;

public class PedalPlacesTests
{
    private const UnixFileMode Private = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
    private const UnixFileMode OthersLook = Private | UnixFileMode.GroupRead | UnixFileMode.GroupExecute;

    // Other systems have other places; see docs/pedal.md.
    private static bool Applies => !OperatingSystem.IsWindows();

    private static string Made(string path, UnixFileMode mode)
    {
        if (OperatingSystem.IsWindows()) throw new PlatformNotSupportedException();
        Directory.CreateDirectory(path);
        File.SetUnixFileMode(path, mode);
        return path;
    }

    private static PedalSocket Open(PedalPlaces places)
    {
        PedalSocket? socket = PedalSocket.Open(places, new PedalLimits(), SystemUser.Me, out string whyNot);
        Assert.True(socket is not null, whyNot);
        return socket;
    }

    [Fact]
    public void A_private_runtime_folder_comes_first()
    {
        if (!Applies) return;
        using TemporaryFolder home = new();
        string run = Made(Path.Combine(home.Path, "run"), Private), data = Made(Path.Combine(home.Path, "data"), Private);
        PedalPlaces places = new(data, "BENCH7", run, []);
        using PedalSocket socket = Open(places);
        Assert.Equal(Path.Combine(run, "servicerunner", "BENCH7.sock"), socket.Path);
        if (!OperatingSystem.IsWindows()) Assert.Equal(Private, File.GetUnixFileMode(Path.Combine(run, "servicerunner")));
        Assert.Contains(socket.Path, places.ToCall());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_runtime_folder_that_others_can_look_into_is_not_used(bool inner)
    {
        if (!Applies) return;
        using TemporaryFolder home = new();
        string run = Made(Path.Combine(home.Path, "run"), inner ? Private : OthersLook), data = Made(Path.Combine(home.Path, "data"), Private);
        if (inner) Made(Path.Combine(run, "servicerunner"), OthersLook);
        using PedalSocket socket = Open(new PedalPlaces(data, "BENCH7", run, []));
        Assert.Equal(Path.Combine(data, "pedal.sock"), socket.Path);
    }

    [Theory]
    [InlineData("")]
    [InlineData("run")]
    [InlineData("/there/is/no/such/folder")]
    public void A_runtime_folder_that_is_none_is_not_used(string run)
    {
        if (!Applies) return;
        using TemporaryFolder home = new();
        string data = Made(Path.Combine(home.Path, "data"), Private);
        using PedalSocket socket = Open(new PedalPlaces(data, "BENCH7", run, []));
        Assert.Equal(Path.Combine(data, "pedal.sock"), socket.Path);
    }

    [Fact]
    public void A_data_folder_whose_path_is_too_long_leaves_the_folder_for_temporary_files()
    {
        if (!Applies) return;
        using TemporaryFolder home = new();
        string data = Made(Path.Combine(home.Path, new string('d', 120)), Private);
        PedalPlaces places = new(data, "BENCH7", null, [home.Path]);
        using PedalSocket socket = Open(places);
        Assert.Equal(Path.Combine(home.Path, $"servicerunner-{SystemUser.Me}", "BENCH7.sock"), socket.Path);
        if (!OperatingSystem.IsWindows()) Assert.Equal(Private, File.GetUnixFileMode(Path.GetDirectoryName(socket.Path)!));
        Assert.Contains(socket.Path, places.ToCall());
    }

    [Fact]
    public void The_length_counts_bytes_and_its_last_byte_is_used()
    {
        if (!Applies) return;
        using TemporaryFolder home = new();
        int room = PedalPlaces.LongestPath - home.Path.Length - "/".Length - "/pedal.sock".Length;
        string fits = Made(Path.Combine(home.Path, new string('d', room)), Private);
        using (PedalSocket socket = Open(new PedalPlaces(fits, "BENCH7", null, [home.Path]))) Assert.Equal(Path.Combine(fits, "pedal.sock"), socket.Path);
        string wider = Made(Path.Combine(home.Path, new string('d', room - 1) + "é"), Private);
        using (PedalSocket socket = Open(new PedalPlaces(wider, "BENCH7", null, [home.Path]))) Assert.StartsWith(Path.Combine(home.Path, "servicerunner-"), socket.Path, StringComparison.Ordinal);
    }

    [Fact]
    public void A_data_folder_in_which_others_can_write_is_not_used()
    {
        if (!Applies) return;
        using TemporaryFolder home = new();
        string data = Made(Path.Combine(home.Path, "data"), Private | UnixFileMode.GroupWrite | UnixFileMode.GroupExecute);
        using PedalSocket socket = Open(new PedalPlaces(data, "BENCH7", null, [home.Path]));
        Assert.StartsWith(Path.Combine(home.Path, "servicerunner-"), socket.Path, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("open")]
    [InlineData("link")]
    [InlineData("file")]
    public void A_temporary_folder_that_somebody_else_may_have_laid_out_is_refused(string trap)
    {
        if (!Applies) return;
        using TemporaryFolder home = new();
        string data = Made(Path.Combine(home.Path, new string('d', 120)), Private), wanted = Path.Combine(home.Path, $"servicerunner-{SystemUser.Me}");
        switch (trap)
        {
            case "open": Made(wanted, OthersLook); break;
            case "link": File.CreateSymbolicLink(wanted, Made(Path.Combine(home.Path, "elsewhere"), Private)); break;
            default: File.WriteAllText(wanted, ""); break;
        }
        PedalPlaces places = new(data, "BENCH7", null, [home.Path]);
        Assert.Null(PedalSocket.Open(places, new PedalLimits(), SystemUser.Me, out string whyNot));
        Assert.Contains(wanted, whyNot, StringComparison.Ordinal);
        Assert.DoesNotContain(places.ToCall(), p => p.StartsWith(wanted, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("../../etc/bench")]
    [InlineData("")]
    [InlineData("a b")]
    [InlineData("01234567890123456789012345678901234567890")]
    public void An_edited_bench_id_leads_nowhere(string bench)
    {
        using TemporaryFolder home = new();
        PedalPlaces places = new(home.Path, bench, home.Path, [home.Path]);
        Assert.Null(PedalSocket.Open(places, new PedalLimits(), SystemUser.Me, out string whyNot));
        Assert.Equal("The pedal's socket is not open (the bench's id in servicerunner-data is not one); keys and pedals that send keys work as ever.", whyNot);
        Assert.Empty(Directory.EnumerateFileSystemEntries(home.Path));
        Assert.Null(PedalCall.Press(places, "go-on"));
    }

    [Fact]
    public void A_caller_without_the_sessions_variables_finds_the_bench_and_one_with_them_too()
    {
        if (!Applies) return;
        using TemporaryFolder home = new();
        string run = Made(Path.Combine(home.Path, "run"), Private);
        DataFolder folder = ((FolderReady)DataFolder.Create(Path.Combine(home.Path, "data"))).Folder;
        using PedalSocket socket = Open(new PedalPlaces(folder.Path, folder.Bench, null, []));
        socket.Arrived = () =>
        {
            if (socket.TryTake(out PedalPress? press)) press.Answer("heard");
        };
        Assert.Equal("ok: heard", PedalCall.Press(new PedalPlaces(folder.Path, folder.Bench, run, [home.Path]), "go-on"));
        Assert.Empty(Directory.EnumerateFileSystemEntries(run)); // who calls makes nothing
    }
}
