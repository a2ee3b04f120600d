namespace ServiceRunner.Tests.Shared;

/// <summary>The folder that holds the solution.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ServiceRunner.sln"))) folder = folder.Parent;
        // Built into a folder outside of the repository: the sources know where they stand.
        return folder?.FullName ?? Path.GetFullPath(Path.Combine(Here(), "..", ".."));
    }

    private static string Here([System.Runtime.CompilerServices.CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;
}
