using ServiceRunner.Screens.Intake;

namespace ServiceRunner.Lines;

/// <summary>An intake by the numbers of its lines: first what is filled in, and what is still empty in one sentence.</summary>
internal static class IntakeLines
{
    public static IEnumerable<Telling> Of(IntakeModel model)
    {
        IReadOnlyList<IntakeField> fields = model.Fields;
        for (int i = 0; i < fields.Count; i++)
            if (fields[i].Text.Length > 0) yield return new($"{i + 1}: {fields[i].Name}, {fields[i].Text}", $"{i} {fields[i].Text}");
        string empty = string.Join(", ", fields.Select((f, i) => (f, i)).Where(x => x.f.Text.Length == 0).Select(x => $"{x.i + 1} {x.f.Name.ToLowerInvariant()}"));
        if (empty.Length > 0) yield return $"Empty: {empty}";
        yield return $"Enter: {model.Marked + 1}, {fields[model.Marked].Name}; a number changes that line{(model.IsNew ? ", b books it in" : "")}";
    }
}
