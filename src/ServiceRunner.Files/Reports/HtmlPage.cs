using System.Security.Cryptography;
using System.Text;

namespace ServiceRunner.Files.Reports;

/// <summary>The page around a report or a slip: well-formed, with one style sheet in it, and nothing that runs or loads.</summary>
internal static class HtmlPage
{
    /// <param name="title">What a browser shows above it.</param>
    /// <param name="sheet">The style sheet. Nothing typed may ever come into it.</param>
    /// <param name="body">What stands on it.</param>
    /// <param name="pictures">True if pictures stand on it, as data within the page itself.</param>
    public static string Of(string title, Html sheet, IEnumerable<Html> body, bool pictures = false) => Html.Of($"""
        <!DOCTYPE html>
        <html xmlns="http://www.w3.org/1999/xhtml" lang="en">
        <head>
        <meta charset="utf-8"/>
        <meta http-equiv="Content-Security-Policy" content="{Policy(sheet, pictures)}"/>
        <meta name="referrer" content="no-referrer"/>
        <meta name="viewport" content="width=device-width, initial-scale=1"/>
        <title>{title}</title>
        <style>{sheet}</style>
        </head>
        <body>
        {body}</body>
        </html>

        """).ToString();

    // What a page may load and run: this one style sheet, pictures that it holds itself, and nothing else.
    private static string Policy(Html sheet, bool pictures) =>
        $"default-src 'none'; {(pictures ? "img-src data:; " : "")}style-src 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(sheet.ToString())))}'; base-uri 'none'; form-action 'none'";
}
