using System.Globalization;
using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Sentences;

/// <summary>What was noticed on opening the journal, as a sentence.</summary>
public static class NoteWords
{
    /// <summary>That the disk has little room left.</summary>
    public static string DiskLow(long left, string folder) => string.Create(CultureInfo.InvariantCulture,
        $"The disk of {folder} is nearly full: {left >> 20} MiB are left. Make room soon; when there is none, nothing more can be written down.");

    /// <summary>The sentence.</summary>
    public static string Sentence(LogNote note, string folder) => note switch
    {
        TornTail x => string.Create(CultureInfo.InvariantCulture, $"The last run was cut off in the middle of a writing that was never confirmed; {x.Length} bytes were put aside in {x.MovedTo}. Nothing that was shown as done is lost."),
        IndexRebuilt x => string.Create(CultureInfo.InvariantCulture, $"The index was made anew from the journal ({x.Lines} lines). Nothing is lost."),
        EndsBeforeIndex x => string.Create(CultureInfo.InvariantCulture, $"The journal in {folder} ends at line {x.JournalSequence}, but line {x.IndexSequence} had been confirmed: something was taken away from it. Look for a backup."),
        ReadsUpTo x => FaultWords.Sentence(x.Damage, folder),
        BenchDiffers => $"The journal in {folder} was begun by another bench.",
        _ => note.ToString(),
    };
}
