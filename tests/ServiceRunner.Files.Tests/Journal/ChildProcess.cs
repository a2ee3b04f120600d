using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Index;
using ServiceRunner.Files.Journal;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Files.Tests.Journal;

/// <summary>
/// A second process for tests that need one: this test assembly itself, run as a program, which does what the variable
/// says before its own (empty) beginning.
/// </summary>
internal static class ChildProcess
{
    private const string Variable = "SERVICERUNNER_TEST_CHILD";

    /// <param name="task">What the child does: append, or hold.</param>
    /// <param name="under">A program and its arguments that runs the child.</param>
    public static Process Start(string task, string folder, params string[] under)
    {
        string host = Environment.ProcessPath is { } path && Path.GetFileNameWithoutExtension(path) == "dotnet" ? path : FactNeedingAttribute.Find("dotnet")!;
        string[] command = [.. under, host, "exec", typeof(ChildProcess).Assembly.Location];
        ProcessStartInfo start = new(command[0], command[1..]) { RedirectStandardOutput = true, RedirectStandardInput = true };
        start.Environment[Variable] = $"{task} {folder}";
        return Process.Start(start)!;
    }

    [ModuleInitializer]
    [SuppressMessage("Usage", "CA2255", Justification = "Tests are run as a program here.")]
    internal static void RunIfChild()
    {
        if (Environment.GetEnvironmentVariable(Variable) is not { } line) return;
        string[] words = line.Split(' ', 2);
        DataFolder folder = ((FolderReady)DataFolder.Open(words[1])).Folder;
        OpenOutcome outcome = JobLog.Open(folder, OpenMode.Own, LogBench.RowOf);
        if (outcome is not Opened { Log: var log })
        {
            Say(((OpenRefused)outcome).Fault.GetType().Name);
            Environment.Exit(1);
            return;
        }
        if (words[0] == "append") Append(log);
        Say("ready");
        Console.ReadLine();
        log.Dispose();
        Environment.Exit(0);
    }

    /// <summary>Appends until something is refused, then once more; says each thing once it is so.</summary>
    private static void Append(JobLog log)
    {
        int refusals = 0;
        SubjectRow[] rows = [.. Enumerable.Range(0, 3).Select(j => log.Row($"JOB{j}") ?? LogBench.RowOf($"JOB{j}", [])!)];
        for (int i = 0; refusals < 2; i++)
        {
            int job = i % 3, other = (i + 1) % 3;
            NewLine first = Line(rows[job], "Running"), second = Line(rows[other], "Held");
            AppendOutcome outcome = i % 2 == 0 ? log.Append(first) : log.Append(first, second);
            if (outcome is Appended done)
            {
                rows[job] = first.Row!();
                if (i % 2 == 1) rows[other] = second.Row!();
                Say(done.Lines[^1].Sequence.ToString(System.Globalization.CultureInfo.InvariantCulture));
            }
            else
            {
                refusals++;
                Say(((AppendRefused)outcome).Fault.ToString());
            }
        }
    }

    private static NewLine Line(SubjectRow before, string state)
    {
        NewLine line = LogBench.Line(before.Subject, (int)before.LastN + 1, state);
        SubjectRow row = LogBench.Fold(before, line.Events, line.At, before.LastN + 1);
        return line with { Row = () => row };
    }

    private static void Say(string text)
    {
        Console.Out.WriteLine(text);
        Console.Out.Flush();
    }
}
