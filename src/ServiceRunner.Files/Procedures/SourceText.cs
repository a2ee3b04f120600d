using System.Security.Cryptography;
using System.Text;

namespace ServiceRunner.Files.Procedures;

/// <summary>A text that was read, as a job pins it.</summary>
/// <param name="Name">The file's name without its folder.</param>
/// <param name="Text">The text, without a byte order mark, its line ends as they were.</param>
/// <param name="Sha256">SHA-256 over the text's UTF-8 bytes, in lower-case hexadecimal digits.</param>
public sealed record SourceText(string Name, string Text, string Sha256)
{
    /// <summary>Makes one and computes its hash.</summary>
    public static SourceText Of(string name, string text) =>
        new(name, text, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))));
}
