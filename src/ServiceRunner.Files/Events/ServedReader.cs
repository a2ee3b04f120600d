using System.Text.Json;

namespace ServiceRunner.Files.Events;

/// <summary>What a verified line says of a point that a batch served.</summary>
public sealed record ServedSaid(string Point, string Role, string Lubricant, string By, DateTimeOffset At, DateTimeOffset? Remembered);

/// <summary>
/// Reads, of a job's line, only what says which points a batch served: a trace reads thousands of lines, and most of each is
/// about something else. Of any other form than the one written today it reads nothing, and the line has to be read whole.
/// </summary>
internal sealed class ServedReader
{
    private readonly List<(string Step, string Point, string Role, string Lubricant)> _served = [];
    private readonly List<(string Step, DateTimeOffset? Remembered)> _done = [];
    private string _role = "", _lubricant = "", _by = "";
    private bool _whole;

    /// <summary>Reads the body of a line; null if it is of another form.</summary>
    public List<ServedSaid>? Read(ReadOnlySpan<byte> body, string batch)
    {
        _served.Clear();
        _done.Clear();
        _whole = true;
        try
        {
            (string by, DateTimeOffset at) = Body(body, batch);
            return _whole ? [.. _served.Select(s => new ServedSaid(s.Point, s.Role, s.Lubricant, by, at, RememberedOf(s.Step)))] : null;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or FormatException or ArgumentException)
        {
            return null;
        }
    }

    private DateTimeOffset? RememberedOf(string step)
    {
        foreach ((string of, DateTimeOffset? remembered) in _done)
            if (of == step) return remembered;
        return null;
    }

    private (string By, DateTimeOffset At) Body(ReadOnlySpan<byte> body, string batch)
    {
        Utf8JsonReader json = new(body);
        string by = "";
        DateTimeOffset? at = null;
        int offset = 0;
        json.Read();
        while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
        {
            if (json.ValueTextEquals("by"u8)) by = Kept(ref json, ref _by);
            else if (json.ValueTextEquals("at"u8)) at = json.Read() ? json.GetDateTimeOffset() : null;
            else if (json.ValueTextEquals("off"u8)) offset = json.Read() ? json.GetInt32() : 0;
            else if (json.ValueTextEquals("events"u8)) Events(ref json, batch);
            else json.Skip();
        }
        _whole &= at is not null && json.TokenType == JsonTokenType.EndObject;
        return (by, at.GetValueOrDefault().ToOffset(TimeSpan.FromMinutes(offset)));
    }

    private void Events(ref Utf8JsonReader json, string batch)
    {
        json.Read();
        while (json.Read() && json.TokenType == JsonTokenType.StartObject)
        {
            // The kind stands first, or it is not of our writing.
            if (!json.Read() || !json.ValueTextEquals("kind"u8) || !json.Read()) _whole = false;
            if (!_whole) return;
            if (json.ValueTextEquals(JobEventShapes.Served)) Served(ref json, batch);
            else if (json.ValueTextEquals(JobEventShapes.Done)) Done(ref json);
            else
            {
                if (json.ValueSpan.StartsWith("served."u8) || json.ValueSpan.StartsWith("done."u8)) _whole = false;
                while (json.Read() && json.TokenType == JsonTokenType.PropertyName) json.Skip();
            }
        }
    }

    private void Served(ref Utf8JsonReader json, string batch)
    {
        string step = "", point = "", role = "", lubricant = "";
        bool ours = false;
        while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
        {
            if (json.ValueTextEquals("step"u8)) step = Text(ref json);
            else if (json.ValueTextEquals("point"u8)) point = Text(ref json);
            else if (json.ValueTextEquals("role"u8)) role = Kept(ref json, ref _role);
            else if (json.ValueTextEquals("lubricant"u8)) lubricant = Kept(ref json, ref _lubricant);
            else if (json.ValueTextEquals("batch"u8)) ours = json.Read() && json.ValueTextEquals(batch);
            else json.Skip();
        }
        if (ours) _served.Add((step, point, role, lubricant));
    }

    private void Done(ref Utf8JsonReader json)
    {
        string step = "";
        DateTimeOffset? remembered = null;
        while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
        {
            if (json.ValueTextEquals("step"u8)) step = Text(ref json);
            else if (json.ValueTextEquals("remembered"u8)) remembered = json.Read() ? json.GetDateTimeOffset() : null;
            else json.Skip();
        }
        _done.Add((step, remembered));
    }

    private static string Text(ref Utf8JsonReader json)
    {
        json.Read();
        return json.GetString() ?? "";
    }

    // Neighbouring lines mostly name the same.
    private static string Kept(ref Utf8JsonReader json, ref string kept)
    {
        json.Read();
        return json.ValueTextEquals(kept) ? kept : kept = json.GetString() ?? "";
    }
}
