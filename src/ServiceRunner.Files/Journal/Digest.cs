using System.Buffers;
using System.Runtime.InteropServices;
using System.Security.Cryptography;

namespace ServiceRunner.Files.Journal;

/// <summary>A SHA-256, or none (which is written as an empty text: before the first line there is nothing).</summary>
[StructLayout(LayoutKind.Sequential)]
public readonly record struct Digest
{
    public const int HexLength = 64;
    private static readonly SearchValues<byte> LowerHex = SearchValues.Create("0123456789abcdef"u8);
    private readonly ulong _a, _b, _c, _d;

    /// <summary>Has the library that computes it loaded meanwhile: it takes milliseconds, and the first line waits for it.</summary>
    public static void Prepare() => ThreadPool.UnsafeQueueUserWorkItem(_ => Of([]), null);

    public bool IsNone => (_a | _b | _c | _d) == 0;

    public static Digest Of(ReadOnlySpan<byte> bytes)
    {
        Digest digest = default;
        SHA256.HashData(bytes, BytesOf(ref digest));
        return digest;
    }

    /// <summary>Reads 64 lower-case hex digits, or an empty text. Capitals are refused: one hash has one spelling.</summary>
    public static bool TryParse(ReadOnlySpan<byte> hex, out Digest digest)
    {
        digest = default;
        if (hex.IsEmpty) return true;
        return hex.Length == HexLength && !hex.ContainsAnyExcept(LowerHex)
            && Convert.FromHexString(hex, BytesOf(ref digest), out _, out _) == OperationStatus.Done;
    }

    public static bool TryParse(string hex, out Digest digest)
    {
        digest = default;
        return hex.All(char.IsAscii) && TryParse(System.Text.Encoding.ASCII.GetBytes(hex), out digest);
    }

    /// <summary>Writes the 64 hex digits, or nothing; returns how many.</summary>
    public int WriteHex(Span<byte> hex)
    {
        if (IsNone) return 0;
        Digest copy = this;
        Convert.TryToHexStringLower(BytesOf(ref copy), hex, out int written);
        return written;
    }

    public override string ToString()
    {
        Digest copy = this;
        return IsNone ? "" : Convert.ToHexStringLower(BytesOf(ref copy));
    }

    private static Span<byte> BytesOf(ref Digest digest) => MemoryMarshal.AsBytes(MemoryMarshal.CreateSpan(ref digest, 1));
}
