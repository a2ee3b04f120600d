using ServiceRunner.Files.Data;

namespace ServiceRunner.Files.Reports;

/// <summary>
/// Kept pictures as they stand within a page that loads nothing: small ones as data, until the page has enough of them.
/// Of every other one the name and the hash are told, by which it can be found.
/// </summary>
/// <param name="read">A kept picture's bytes by its hash; null if it is missing or was changed.</param>
internal sealed class EmbeddedPictures(Func<string, byte[]?> read)
{
    /// <summary>A picture in a page has fewer bytes than this.</summary>
    public const int Each = 2_000_000;

    /// <summary>All pictures of a page together have fewer bytes than this.</summary>
    public const int Together = 10_000_000;

    private int _taken;

    public Html Of(IReadOnlyList<PictureLine> pictures) => Html.If(pictures.Count > 0, () => Html.Of($"""
        <div class="pictures">{pictures.Select(Figure)}</div>
        """));

    private Html Figure(PictureLine picture)
    {
        string caption = picture.Caption.Length > 0 ? $"{picture.Name}: {picture.Caption}" : picture.Name;
        return Data(picture.Hash) is { } data
            ? Html.Of($"""<figure><img src="{data}" alt="{caption}"/><figcaption>{caption}</figcaption></figure>""")
            : Html.Of($"""<p>Picture, not shown here: {caption}, <code>{picture.Hash}</code></p>""");
    }

    private string? Data(string hash)
    {
        if (read(hash) is not { Length: < Each } bytes || _taken + bytes.Length >= Together || PhotoFile.Kind(bytes) is not { Length: > 0 } kind) return null;
        _taken += bytes.Length;
        return $"data:{kind};base64,{Convert.ToBase64String(bytes)}";
    }
}
