using System.CommandLine;
using System.CommandLine.Invocation;
using System.Text;
using ServiceRunner.Demo;
using ServiceRunner.Diagnosis;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Lines;
using ServiceRunner.Verbs;

namespace ServiceRunner;

internal static class Program
{
    public static int Main(string[] args)
    {
        Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        DiagnosticLog diagnosis = new(TimeProvider.System);
        return Guarded(() =>
        {
            ParseResult parsed = Root(diagnosis).Parse(args);
            int exit = parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
            return parsed.Action is ParseErrorAction ? ExitCodes.Usage : exit;
        }, Console.Error, diagnosis);
    }

    /// <summary>What nobody foresaw becomes one sentence and an exit code, whichever verb it befell.</summary>
    internal static int Guarded(Func<int> run, TextWriter errors, DiagnosticLog diagnosis)
    {
        int exit = ExitCodes.Unforeseen;
        try
        {
            exit = run();
        }
        catch (Exception e)
        {
            diagnosis.Fault(e);
            string details = diagnosis.Path is { } path ? $"The details stand in {path}." : "With --diagnose, the details are written into the data folder.";
            errors.WriteLine($"servicerunner: something went wrong that was not foreseen: {PlainText.Of(e.Message).TrimEnd('.')} ({e.GetType().Name}). What was shown as done is kept. {details}");
        }
        diagnosis.Stop(exit);
        return exit;
    }

    internal static RootCommand Root(DiagnosticLog diagnosis)
    {
        Option<string> data = new("--data") { Description = "The data folder.", HelpName = "FOLDER", DefaultValueFactory = _ => House.DefaultFolder, Recursive = true };
        Option<bool> read = new("--read") { Description = "Open to read only, also while another run has the folder." };
        Option<bool> mono = new("--monochrome") { Description = "Weight and underline instead of colour (as NO_COLOR does)." };
        Option<bool> lines = new("--lines") { Description = "Line by line, for screen readers and plain terminals." };
        Option<bool> diagnose = new("--diagnose") { Description = "Write more into the folder's diagnostic log, which holds no names and no texts.", Recursive = true };
        RootCommand root = new("ServiceRunner walks a watch or clock repairer through a service and keeps the log of it.") { data, read, mono, lines, diagnose };
        Act(root, p => BenchVerb.Run(p.GetValue(data)!, p.GetValue(read), p.GetValue(mono), LineMode.Of(p.GetValue(lines)), diagnosis));

        Option<bool> reset = new("--reset") { Description = "Throw the invented workshop away and make it anew." };
        Command demo = new("demo", "Open the bench on an invented workshop, in a folder of its own.") { reset, mono, lines };
        Act(demo, p => DemoVerb.Run(p.GetResult(data) is { Implicit: false } ? p.GetValue(data)! : House.DemoFolder, p.GetValue(reset), p.GetValue(mono), LineMode.Of(p.GetValue(lines)), diagnosis));

        Argument<string[]> paths = new("PATH") { Description = "Files, or folders with .yaml files.", Arity = ArgumentArity.OneOrMore };
        Option<bool> json = new("--json") { Description = "Write what was found as JSON." };
        Command check = new("check", "Check procedures and workshop files.") { paths, json };
        Act(check, p => CheckVerb.Run(p.GetValue(paths)!, p.GetValue(data)!, p.GetValue(json)));

        Option<bool> all = new("--all") { Description = "Also those finished long ago." };
        Command jobs = new("jobs", "List the jobs.") { all };
        Act(jobs, p => JobsVerb.Run(p.GetValue(data)!, p.GetValue(all)));

        Argument<string> job = new("JOB") { Description = "The job's number." };
        Option<bool> html = new("--html") { Description = "As one page for a browser or a printer, instead of plain text." };
        Option<string?> reportTo = new("--out") { Description = "Write to a file instead of standard output.", HelpName = "FILE" };
        Command report = new("report", "Write what was done in a job, as plain text or as a page.") { job, html, reportTo };
        Act(report, p => PaperVerb.Report(p.GetValue(data)!, p.GetValue(job)!, p.GetValue(html), p.GetValue(reportTo)));

        Command receipt = new("receipt", "Write the owner's receipt of a job, as plain text or as a page to print.") { job, html, reportTo };
        Act(receipt, p => PaperVerb.Receipt(p.GetValue(data)!, p.GetValue(job)!, p.GetValue(html), p.GetValue(reportTo)));
        Command label = new("label", "Write the tray's label of a job, as plain text or as a page to print.") { job, html, reportTo };
        Act(label, p => PaperVerb.Label(p.GetValue(data)!, p.GetValue(job)!, p.GetValue(html), p.GetValue(reportTo)));
        Command estimate = new("estimate", "Write the condition of a piece and what its repair will cost, as plain text or as a page to print.") { job, html, reportTo };
        Act(estimate, p => PaperVerb.Estimate(p.GetValue(data)!, p.GetValue(job)!, p.GetValue(html), p.GetValue(reportTo)));
        Command sheet = new("sheet", "Write the sizes of a part to be made, from what was measured in a job.") { job, html, reportTo };
        Act(sheet, p => PaperVerb.Sheet(p.GetValue(data)!, p.GetValue(job)!, p.GetValue(html), p.GetValue(reportTo)));
        Argument<string> batch = new("BATCH") { Description = "The batch as it was written down, the whole of it." };
        Option<bool> traceJson = new("--json") { Description = "Write it as JSON." };
        Command trace = new("trace", "List the jobs and the oiling points that had a batch.") { batch, traceJson };
        Act(trace, p => TraceVerb.Run(p.GetValue(data)!, p.GetValue(batch)!, p.GetValue(traceJson)));

        Option<string?> recover = new("--recover") { Description = "Copy what is whole into a new folder.", HelpName = "FOLDER" };
        Command audit = new("audit", "Verify the whole job log and name every damage.") { recover };
        Act(audit, p => AuditVerb.Run(p.GetValue(data)!, p.GetValue(recover)));

        Argument<string> word = new("WORD") { Description = "go-on, back, say-again, answer or mark." };
        Command pedal = new("pedal", "Press a pedal of the bench that is open, from another program.") { word };
        Act(pedal, p => PedalVerb.Run(p.GetValue(data)!, p.GetValue(word)!));

        Argument<string> to = new("FILE") { Description = "The backup's file." };
        Option<bool> replace = new("--replace") { Description = "Replace the file if it is there." };
        Command backup = new("backup", "Copy the data folder into one file, also while a bench is open.") { to, replace };
        Act(backup, p => BackupVerb.Run(p.GetValue(data)!, p.GetValue(to)!, p.GetValue(replace)));

        Argument<string> from = new("FILE") { Description = "The backup's file." };
        Command restore = new("restore", "Make a data folder, missing or empty so far, from a backup.") { from };
        Act(restore, p => RestoreVerb.Run(p.GetValue(data)!, p.GetValue(from)!));

        Argument<string> person = new("PERSON") { Description = "A part of the name, or the id." };
        Option<bool> yes = new("--yes") { Description = "Erase the one that is listed." };
        Command erase = new("erase-person", "List owners by name with their jobs; erase the name and address of one.") { person, yes };
        Act(erase, p => ErasePersonVerb.Run(p.GetValue(data)!, p.GetValue(person)!, p.GetValue(yes)));

        Argument<string> shell = new("SHELL") { Description = "bash, zsh or fish." };
        Command completion = new("completion", "Print a script that completes verbs and options in a shell.") { shell };
        Act(completion, p => CompletionVerb.Run(p.GetValue(shell)!));

        foreach (Command verb in new[] { demo, check, jobs, report, sheet, receipt, label, estimate, trace, audit, pedal, completion }) root.Subcommands.Add(verb);
        foreach (Command verb in new[] { backup, restore, erase }) root.Subcommands.Add(verb);
        return root;

        // The bench opens the log itself, once the folder is its own.
        void Act(Command verb, Func<ParseResult, int> run) => verb.SetAction(p =>
        {
            diagnosis.Closely = p.GetValue(diagnose);
            if (diagnosis.Closely && verb.Name != "demo" && DataFolder.Open(p.GetValue(data)!) is FolderReady) diagnosis.OpenIn(p.GetValue(data)!, verb == root ? "bench" : verb.Name);
            return run(p);
        });
    }
}
