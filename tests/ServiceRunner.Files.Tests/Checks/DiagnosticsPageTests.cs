using System.Runtime.CompilerServices;
using System.Text;
using ServiceRunner.Files.Checks;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Files.Tests.Checks;

/// <summary>docs/diagnostics.md is made from the rules and their fixtures. SNAPSHOT_ACCEPT=1 writes it anew.</summary>
public class DiagnosticsPageTests
{
    private const string Head = """
        # Diagnostics

        `servicerunner check PATH…` looks at procedure and workshop files. This page is made from the rules themselves; a test
        fails when it is stale.

        An *error* keeps a file from being used. A *warning* is what a careful colleague would ask about. A *note* is worth
        knowing. Each is written as `file:line:column: error code: message`, with a hint under it, and a sentence at the end
        counts them. A code never changes its meaning.

        ## As JSON

        `check --json` writes one object: `format` (1), `files`, `errors`, `warnings`, `notes` (how many of each) and
        `diagnostics`, a list of objects with `code`, `severity` (`error`, `warning`, `note`), `file`, `line` and `column` (from 1;
        both left out where the file as a whole is meant), `message`, and `hint` (left out where there is none). Keys may be
        added; none will change.

        ## All of them
        """;

    [Fact]
    public void The_page_is_what_the_rules_say() =>
        Snapshot.Compare(Page(), Path.Combine(Repository.Root, "docs", "diagnostics.md"), Path.Combine(Repository.Root, "docs", "diagnostics.received.md"));

    [Fact]
    public void Codes_are_words_and_stand_once()
    {
        Assert.Equal(Rules.All.Count, Rules.All.Select(r => r.Code).Distinct().Count());
        Assert.All(Rules.All, rule => Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)*$", rule.Code));
        Assert.All(Rules.All, rule => Assert.EndsWith(".", rule.Explanation, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_file_of_a_rule_is_in_the_list()
    {
        string checks = Path.Combine(Repository.Root, "src", "ServiceRunner.Files", "Checks");
        int written = Directory.GetFiles(checks, "*.cs", SearchOption.AllDirectories).Count(f => File.ReadAllText(f).Contains("public static readonly Rule Rule", StringComparison.Ordinal));
        Assert.Equal(written, Rules.All.Count);
    }

    private static string Page()
    {
        StringBuilder page = new(Head.ReplaceLineEndings("\n") + "\n");
        foreach (Rule rule in Rules.All)
        {
            page.Append($"\n### {rule.Code}\n\n{rule.Severity}. {rule.Title}. {rule.Explanation}\n");
            if (Example(rule.Code) is { } example) page.Append($"\n```text\n{example}\n```\n");
        }
        return page.ToString();
    }

    private static string? Example(string code, [CallerFilePath] string here = "")
    {
        string verified = Path.Combine(Path.GetDirectoryName(here)!, "rules", code + ".verified.txt");
        return File.Exists(verified) ? File.ReadLines(verified).FirstOrDefault(l => l.Contains($" {code}: ", StringComparison.Ordinal)) : null;
    }
}
