namespace ServiceRunner.Tests.EndToEnd;

/// <summary>A folder that is gone after the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("servicerunner-test-").FullName;

    public string File(string name, string text)
    {
        string path = System.IO.Path.Combine(Path, name);
        System.IO.File.WriteAllText(path, text);
        return path;
    }

    public string File(string name, byte[] bytes)
    {
        string path = System.IO.Path.Combine(Path, name);
        System.IO.File.WriteAllBytes(path, bytes);
        return path;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
