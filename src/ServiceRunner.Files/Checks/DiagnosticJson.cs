using System.Text.Encodings.Web;
using System.Text.Json;

namespace ServiceRunner.Files.Checks;

/// <summary>Diagnostics as JSON for other programs. docs/diagnostics.md has the shape; it only ever grows.</summary>
public static class DiagnosticJson
{
    // Quotation marks and ° stay readable; what could break out of JSON is still escaped.
    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes them all.</summary>
    public static void Write(IEnumerable<Diagnostic> diagnostics, int files, Stream to)
    {
        List<Diagnostic> all = [.. diagnostics];
        using Utf8JsonWriter json = new(to, Options);
        json.WriteStartObject();
        json.WriteNumber("format", 1);
        json.WriteNumber("files", files);
        json.WriteNumber("errors", all.Count(d => d.Severity == Severity.Error));
        json.WriteNumber("warnings", all.Count(d => d.Severity == Severity.Warning));
        json.WriteNumber("notes", all.Count(d => d.Severity == Severity.Note));
        json.WriteStartArray("diagnostics");
        foreach (Diagnostic diagnostic in all) Write(diagnostic, json);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Write(Diagnostic diagnostic, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("code", diagnostic.Code);
        json.WriteString("severity", DiagnosticText.Name(diagnostic.Severity));
        json.WriteString("file", diagnostic.File);
        if (diagnostic.Place != default)
        {
            json.WriteNumber("line", diagnostic.Place.Line);
            json.WriteNumber("column", diagnostic.Place.Column);
        }
        json.WriteString("message", diagnostic.Message);
        if (diagnostic.Hint.Length > 0) json.WriteString("hint", diagnostic.Hint);
        json.WriteEndObject();
    }
}
