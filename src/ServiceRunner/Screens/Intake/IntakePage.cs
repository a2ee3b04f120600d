namespace ServiceRunner.Screens.Intake;

/// <summary>Draws an intake: a line for each thing, and below them what belongs into the marked one, or the whole of it where the line is too short.</summary>
internal static class IntakePage
{
    private const int Names = 15;

    public static void Draw(Sheet sheet, int top, int rows, IntakeModel model)
    {
        IReadOnlyList<IntakeField> fields = model.Fields;
        int marked = model.Marked, room = sheet.Width - Names - 4;
        sheet.Write(1, top, Paragraph.Clip(model.IsNew ? "Only what it is must be said. Enter changes the marked line, b books it in." : "Enter changes the marked line; it is written down at once.", sheet.Width - 2), Ink.Faint);
        int lines = Math.Max(1, Math.Min(fields.Count, rows - 4)), first = Math.Clamp(marked - lines / 2, 0, fields.Count - lines);
        for (int i = 0; i < lines; i++)
        {
            IntakeField field = fields[first + i];
            bool here = first + i == marked;
            int y = top + 2 + i;
            sheet.Write(1, y, here ? "›" : " ", Ink.Key);
            sheet.Write(3, y, field.Name, here ? Ink.Strong : Ink.Faint);
            sheet.Write(3 + Names, y, Paragraph.Clip(field.Text.Length > 0 ? field.Text : "–", room), field.Urgent ? Ink.Caution : field.Text.Length == 0 ? Ink.Faint : here ? Ink.Strong : Ink.Plain);
        }
        IntakeField at = fields[marked];
        int below = top + 2 + lines + 1, left = top + rows - below;
        bool clipped = Sheet.Columns(at.Text) > room;
        IReadOnlyList<string> text = Paragraph.Wrap(clipped ? at.Text : at.WhyNot.Length > 0 ? at.WhyNot : at.Hint, sheet.Width - 6);
        for (int i = 0; i < Math.Min(left, text.Count); i++) sheet.Write(3, below + i, text[i], clipped ? Ink.Plain : Ink.Faint);
    }
}
