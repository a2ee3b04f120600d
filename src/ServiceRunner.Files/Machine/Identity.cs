using System.Security.Cryptography;

namespace ServiceRunner.Files.Machine;

/// <summary>
/// Opaque ids: 26 characters of Crockford's base 32, which has no I, L, O or U to misread. The first ten are the
/// milliseconds since 1970, so that ids sort by their making; the other sixteen are 80 random bits.
/// </summary>
public static class Identity
{
    public const int Length = 26;
    private const string Digits = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

    public static string New() => New(TimeProvider.System.GetUtcNow());

    public static string New(DateTimeOffset now)
    {
        Span<byte> random = stackalloc byte[10];
        RandomNumberGenerator.Fill(random);
        UInt128 value = (UInt128)(ulong)Math.Max(0, now.ToUnixTimeMilliseconds()) << 80;
        for (int i = 0; i < random.Length; i++) value |= (UInt128)random[i] << (8 * i);
        Span<char> text = stackalloc char[Length];
        for (int i = Length - 1; i >= 0; i--, value >>= 5) text[i] = Digits[(int)(uint)(value & 31)];
        return new string(text);
    }
}
