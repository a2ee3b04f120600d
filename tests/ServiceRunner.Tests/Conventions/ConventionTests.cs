using System.Reflection;
using ServiceRunner.Screens;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Conventions;

public class ConventionTests
{
    [Fact]
    public void Dependencies_go_one_way()
    {
        Assert.Empty(Ours(typeof(Core.Jobs.Job).Assembly));
        Assert.Equal(["ServiceRunner.Core"], Ours(typeof(Files.Journal.JobLog).Assembly));
        Assert.Equal(["ServiceRunner.Core", "ServiceRunner.Files"], Ours(typeof(Shell).Assembly));
    }

    private static IEnumerable<string> Ours(Assembly assembly) =>
        assembly.GetReferencedAssemblies().Select(a => a.Name!).Where(n => n.StartsWith("ServiceRunner", StringComparison.Ordinal)).Order();

    [Fact]
    public void Files_knows_no_terminal() =>
        Assert.DoesNotContain(typeof(Files.Journal.JobLog).Assembly.GetReferencedAssemblies(), a => a.Name == "Terminal.Gui");

    [Fact]
    public void Only_the_terminal_folder_names_the_terminal_library()
    {
        string source = Path.Combine(Repository.Root, "src", "ServiceRunner");
        IEnumerable<string> others = Directory.GetFiles(source, "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}Terminal{Path.DirectorySeparatorChar}", StringComparison.Ordinal) && !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Where(f => File.ReadAllText(f).Contains("Terminal.Gui", StringComparison.Ordinal));
        Assert.Empty(others);
    }

    [Fact]
    public void Nothing_is_called_after_its_clumsiness()
    {
        foreach (Assembly assembly in new[] { typeof(Core.Jobs.Job).Assembly, typeof(Files.Journal.JobLog).Assembly, typeof(Shell).Assembly })
            Assert.DoesNotContain(assembly.GetTypes(), t => t.Name.EndsWith("Utils", StringComparison.Ordinal) || t.Name.EndsWith("Helper", StringComparison.Ordinal) || t.Name.EndsWith("Manager", StringComparison.Ordinal));
    }
}
