using System.Buffers.Binary;

namespace ServiceRunner.Voice;

/// <summary>Samples as the bytes of a WAV file: one channel, 16 bits.</summary>
internal static class Wave
{
    private const int Head = 44;

    public static byte[] Bytes(ReadOnlySpan<float> samples, int rate)
    {
        byte[] bytes = new byte[Head + 2 * samples.Length];
        Span<byte> head = bytes;
        "RIFF"u8.CopyTo(head);
        BinaryPrimitives.WriteInt32LittleEndian(head[4..], bytes.Length - 8);
        "WAVEfmt "u8.CopyTo(head[8..]);
        BinaryPrimitives.WriteInt32LittleEndian(head[16..], 16);
        BinaryPrimitives.WriteInt16LittleEndian(head[20..], 1);
        BinaryPrimitives.WriteInt16LittleEndian(head[22..], 1);
        BinaryPrimitives.WriteInt32LittleEndian(head[24..], rate);
        BinaryPrimitives.WriteInt32LittleEndian(head[28..], 2 * rate);
        BinaryPrimitives.WriteInt16LittleEndian(head[32..], 2);
        BinaryPrimitives.WriteInt16LittleEndian(head[34..], 16);
        "data"u8.CopyTo(head[36..]);
        BinaryPrimitives.WriteInt32LittleEndian(head[40..], 2 * samples.Length);
        for (int i = 0; i < samples.Length; i++)
            BinaryPrimitives.WriteInt16LittleEndian(head[(Head + 2 * i)..], (short)Math.Round(Math.Clamp(samples[i], -1f, 1f) * short.MaxValue));
        return bytes;
    }
}
