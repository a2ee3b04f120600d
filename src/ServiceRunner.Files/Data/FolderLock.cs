using System.Globalization;
using System.Text;

namespace ServiceRunner.Files.Data;

/// <summary>
/// One process owns a data folder. The kernel lets go of the lock when the process ends, however it ends. The holder's
/// name stands in a second file, since nobody can read the locked one.
/// </summary>
internal sealed class FolderLock : IDisposable
{
    private readonly FileStream _stream;

    private FolderLock(FileStream stream) => _stream = stream;

    public static (FolderLock? Lock, DataFault? Fault) Take(DataFolder folder, TimeProvider clock)
    {
        FileStream stream;
        try
        {
            stream = new FileStream(folder.Lock, DurableFile.Options(FileMode.OpenOrCreate, FileShare.None));
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return (null, IsTaken(e) ? new InUse(HolderOf(folder)) : DurableFile.FaultOf(e, folder.Lock));
        }
        WriteHolder(folder, clock);
        return (new FolderLock(stream), null);
    }

    internal static bool IsTaken(Exception e)
    {
        const int WouldBlock = 11, WouldBlockMac = 35, SharingViolation = 32, LockViolation = 33;
        if (e is not IOException) return false;
        return OperatingSystem.IsWindows() ? (e.HResult & 0xFFFF) is SharingViolation or LockViolation
            : e.HResult == (OperatingSystem.IsMacOS() ? WouldBlockMac : WouldBlock);
    }

    private static string HolderOf(DataFolder folder)
    {
        try
        {
            string text = File.ReadAllText(folder.Holder);
            return text.Length <= 200 ? text : "";
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return "";
        }
    }

    private static void WriteHolder(DataFolder folder, TimeProvider clock)
    {
        string since = clock.GetUtcNow().UtcDateTime.ToString("yyyy-MM-dd HH:mm:ss'Z'", CultureInfo.InvariantCulture);
        try
        {
            using FileStream stream = new(folder.Holder, DurableFile.Options(FileMode.Create, FileShare.Read));
            stream.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"process {Environment.ProcessId} since {since}")));
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            // Only the message of a second start would have used it.
        }
    }

    public void Dispose() => _stream.Dispose();
}
