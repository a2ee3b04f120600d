using System.Globalization;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Sentences;

/// <summary>A fault of the data folder as one clear sentence: what, where, what to do.</summary>
public static class FaultWords
{
    /// <summary>The sentence.</summary>
    public static string Sentence(DataFault fault, string folder) => fault switch
    {
        FolderMissing x => $"There is no data folder at {x.Path}; start 'servicerunner' without a verb to make one, or name another with --data.",
        NotADataFolder x => $"{x.Path} holds other files and is not a data folder of this program; name an empty folder or one of its own with --data.",
        FormatFromTheFuture x => $"{folder} was written by a later version of this program (format {x.Version}); use that version.",
        ReadOnlyFolder x => $"{x.Path} cannot be written to; give yourself write permission or name another folder with --data. Nothing was changed.",
        InUse x => $"{folder} is in use by another run{(x.Holder.Length > 0 ? $" ({x.Holder})" : "")}; close that one, or read with 'servicerunner jobs' and 'servicerunner report'.",
        DiskFull x => $"The disk is full: {x.File} in {folder} could not be written. Nothing of this action was kept; make room and do it again.",
        WriteFailed x => $"{x.File} in {folder} could not be written (error {x.Error}). Nothing of this action was kept; look at the disk and do it again.",
        SyncFailed x => $"The disk did not confirm the last writing to {x.File} in {folder} (error {x.Error}); it may or may not be kept. Close the program, look at the disk, start again.",
        Poisoned x => $"The disk failed earlier (error {x.Error}), so nothing more is written; close the program, look at the disk, start again.",
        Damaged x => string.Create(CultureInfo.InvariantCulture, $"{Path.Combine(folder, x.File)} is damaged at byte {x.Offset} ({Of(x.What)}); what is whole can be read with 'servicerunner jobs', 'audit' lists the damage, 'audit --recover FOLDER' copies what is whole. Nothing was changed."),
        BenchFromTheFuture x => $"A later version of this program went on with the bench in {folder} ('{x.What}'); use that version, or open it with --read.",
        BenchMakesNoSense x => string.Create(CultureInfo.InvariantCulture, $"Entry {x.Entry} of the bench in {folder} is whole but makes no sense ({x.Why.TrimEnd('.')}); open it with --read, or bring a backup back. Nothing was changed."),
        SubjectMoved => "The job was changed by another run meanwhile; open it anew and do it again.",
        DoesNotFollow => "What was brought in does not follow what is here; nothing was changed.",
        ReadOnlyMode => "This is opened to read only.",
        IndexFailed x => $"The index in {folder} could not be used ({x.What}); delete the file 'index.db' there, it is made anew from the journal.",
        KeptTextMissing x => $"A procedure text that this job pinned is missing from {Path.Combine(folder, "kept")} ({x.Hash[..Math.Min(12, x.Hash.Length)]}…); put it back from a backup.",
        KeptTextChanged x => $"A procedure text that this job pinned was changed in {Path.Combine(folder, "kept")} ({x.Hash[..Math.Min(12, x.Hash.Length)]}…); put it back from a backup.",
        BackupExists x => $"{x.File} is there already and was not overwritten; name another file, or add --replace.",
        BackupNotReplaced x => $"The data in {folder} is damaged, and {x.File} may hold more than what is whole of it, so it was not replaced; name another file.",
        BackupPlaceMissing x => $"There is no folder {x.Folder} to put the backup in; make it, or name another file.",
        PartTaken x => $"{x.Path} is in use by another run, or holds something else; wait for that run, or move it away.",
        ReadFailed x => $"{x.File} could not be read (error {x.Error}); look at the disk and at who may read it. Nothing was changed.",
        BackupUnread x => $"What was written for {x.File} could not be read back whole, so there is no backup; look at the disk and do it again.",
        BackupMissing x => $"There is no file {x.File}.",
        NotABackup x => $"{x.File} is not a backup of this program. Nothing was changed.",
        BackupDamaged x => $"{x.File} is damaged{(x.Entry.Length > 0 ? $" ({x.Entry})" : "")} and nothing was restored from it; use another backup.",
        BackupTooLarge x => $"{x.File} holds more than a backup may ({x.Entry}): over 4 GB in one file, or over 200 times its size unpacked.",
        RestoreNotEmpty x => $"{x.Path} is not empty, and a backup is only restored where there is nothing yet; name another folder with --data.",
        _ => fault.ToString(),
    };

    /// <summary>That the bench is shown as it stood before what could not be read of its log.</summary>
    public static string BenchAsBefore(DataFault fault) => $"Jars, bottles, clocks and who is signed in are shown as they stood before the end of the bench's log, which cannot be read: {fault switch
    {
        Damaged x => Place(x.File, x.Offset, x.What),
        BenchFromTheFuture x => $"a later version of this program wrote '{x.What}'",
        BenchMakesNoSense x => string.Create(CultureInfo.InvariantCulture, $"entry {x.Entry} makes no sense ({x.Why.TrimEnd('.')})"),
        _ => fault.ToString(),
    }}.";

    /// <summary>A damage with its place, as the audit lists it.</summary>
    public static string Place(string file, long offset, Damage what) => string.Create(CultureInfo.InvariantCulture, $"{file}: byte {offset}: {Of(what)}");

    private static string Of(Damage what) => what switch
    {
        Damage.Unfinished => "a line has no end",
        Damage.NotALine => "this is no line of the journal",
        Damage.LineHash => "a line does not match its hash",
        Damage.BodyHash => "an entry does not match its hash",
        Damage.Sequence => "a line is missing or out of order",
        Damage.LineLink => "a line does not follow the one before",
        Damage.Bench => "a line belongs to another bench",
        Damage.SubjectSequence => "an entry of this job is missing",
        Damage.BodyLink => "an entry does not follow the one before",
        Damage.Missing => "the file is shorter than it was",
        Damage.TooLong => "a line is too long",
        _ => what.ToString(),
    };
}
