using System.Security.Cryptography;

namespace ServiceRunner.Files.Data;

/// <summary>
/// Texts that jobs pin by their content: a procedure as it was on the day. A text's name is the SHA-256 of its bytes,
/// so that nothing in here can be changed unseen.
/// </summary>
public sealed class KeptTexts(DataFolder folder)
{
    public static string HashOf(ReadOnlySpan<byte> text) => Convert.ToHexStringLower(SHA256.HashData(text));

    /// <summary>Keeps a text, on the disk when this returns. The same text again writes nothing.</summary>
    public KeptOutcome Put(ReadOnlySpan<byte> text)
    {
        string hash = HashOf(text);
        if (Get(hash) is KeptBytes) return new KeptText(hash);
        try
        {
            bool isNew = !Directory.Exists(folder.Kept);
            DurableFile.CreateFolder(folder.Kept);
            DataFault? fault = DurableFile.Write(PathOf(hash), text);
            if (isNew) fault ??= DurableFile.SyncFolderOf(folder.Kept);
            return fault is null ? new KeptText(hash) : new KeptRefused(fault);
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return new KeptRefused(DurableFile.FaultOf(e, folder.Kept));
        }
    }

    public KeptReading Get(string hash)
    {
        if (hash.Length != 64 || !hash.All(c => c is (>= '0' and <= '9') or (>= 'a' and <= 'f'))) return new KeptUnreadable(new KeptTextMissing(hash));
        try
        {
            if (!File.Exists(PathOf(hash))) return new KeptUnreadable(new KeptTextMissing(hash));
            byte[] bytes = File.ReadAllBytes(PathOf(hash));
            return HashOf(bytes) == hash ? new KeptBytes(bytes) : new KeptUnreadable(new KeptTextChanged(hash));
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return new KeptUnreadable(DurableFile.FaultOf(e, PathOf(hash)));
        }
    }

    public bool Has(string hash) => Get(hash) is KeptBytes;

    private string PathOf(string hash) => Path.Combine(folder.Kept, hash);
}

public abstract record KeptOutcome
{
    private protected KeptOutcome() { }
}

public sealed record KeptText(string Hash) : KeptOutcome;

public sealed record KeptRefused(DataFault Fault) : KeptOutcome;

public abstract record KeptReading
{
    private protected KeptReading() { }
}

public sealed record KeptBytes(byte[] Bytes) : KeptReading;

public sealed record KeptUnreadable(DataFault Fault) : KeptReading;
