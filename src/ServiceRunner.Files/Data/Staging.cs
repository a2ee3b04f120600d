namespace ServiceRunner.Files.Data;

/// <summary>
/// A folder beside a target, in which something is made before it takes the target's name in one step. What a run left
/// that was ended in the middle is cleared by the next one; a folder that is not such a one is not touched.
/// </summary>
internal sealed class Staging : IDisposable
{
    private const string Sign = "servicerunner-part";
    private readonly string _path;
    private readonly FileStream _sign;

    private Staging(string path, FileStream sign) => (_path, _sign) = (path, sign);

    /// <summary>The folder for a target, which has its name with <c>.part</c> behind it.</summary>
    public static (Staging? Staging, DataFault? Fault) Beside(string target)
    {
        string path = target + ".part", sign = Path.Combine(path, Sign);
        try
        {
            bool foreign = File.Exists(path) || (Directory.Exists(path) && !File.Exists(sign) && Directory.EnumerateFileSystemEntries(path).Any());
            if (foreign) return (null, new PartTaken(path));
            DurableFile.CreateFolder(path);
            FileStream held;
            try
            {
                held = new FileStream(sign, DurableFile.Options(FileMode.OpenOrCreate, FileShare.None));
            }
            catch (IOException e) when (FolderLock.IsTaken(e))
            {
                return (null, new PartTaken(path));
            }
            Staging staging = new(path, held);
            staging.Clear();
            return (staging, null);
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return (null, DurableFile.FaultOf(e, path));
        }
    }

    public string In(string name) => Path.Combine(_path, name);

    private void Clear()
    {
        foreach (string folder in Directory.GetDirectories(_path)) Directory.Delete(folder, recursive: true);
        foreach (string file in Directory.GetFiles(_path).Where(f => Path.GetFileName(f) != Sign)) File.Delete(file);
    }

    public void Dispose()
    {
        try
        {
            Clear();
            _sign.Dispose();
            Directory.Delete(_path, recursive: true);
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            // The next run clears it.
            _sign.Dispose();
        }
    }
}
