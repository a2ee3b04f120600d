using ServiceRunner.Files.Index;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens;
using ServiceRunner.Screens.Board;

namespace ServiceRunner.Lines;

/// <summary>The jobs by their numbers in the list: nine at first, the rest when more is asked for.</summary>
internal static class BoardLines
{
    private const int First = 9;

    public static IEnumerable<Telling> Of(BoardModel model, Shell shell)
    {
        IReadOnlyList<SubjectRow> rows = model.Rows;
        if (model.All && model.Search.Length == 0) yield return $"{Times.Count(rows.Count, "job")} of all years, the latest first";
        if (model.Search.Length > 0) yield return $"{Times.Count(rows.Count, "job")}{(model.All ? " of all years" : "")} containing '{model.Search}'";
        if (rows.Count == 0 && model.Search.Length == 0) yield return "No job yet: n books one in";
        for (int i = 0; i < Math.Min(First, rows.Count); i++) yield return Job(i, rows[i], model, shell);
        if (rows.Count > First) yield return $"{rows.Count - First} more: the word more tells them";
        if (rows.Count > 0) yield return $"Enter: {Math.Min(model.At, rows.Count - 1) + 1}, {rows[Math.Min(model.At, rows.Count - 1)].Number}";
    }

    public static IEnumerable<Telling> Rest(BoardModel model, Shell shell)
    {
        IReadOnlyList<SubjectRow> rows = model.Rows;
        for (int i = First; i < rows.Count; i++) yield return Job(i, rows[i], model, shell);
    }

    private static Telling Job(int at, SubjectRow row, BoardModel model, Shell shell)
    {
        string owner = model.OwnerOf(row);
        bool works = row.State == "on the bench";
        string since = works ? $"{row.Done} of {row.Total} steps" : Times.For(shell.Session.Now.Wall - row.Since);
        string next = row.Waiting.Length == 0 ? "" : works ? $"; next: {row.Waiting}" : $"; {row.Waiting}";
        DateOnly today = shell.Session.Now.Day;
        string promised = row.Open && row.Promised is { } day ? $"; {IntakeWords.Promised(day, today)}" : "";
        return new($"{at + 1}: {row.Number}, {row.State}, {since}: {row.Title}{(owner.Length > 0 ? $" ({owner})" : "")}{next}{promised}", $"{model.Search} {at} {row.Number} {row.State}");
    }
}
