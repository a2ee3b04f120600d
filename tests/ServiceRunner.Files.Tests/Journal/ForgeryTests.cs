using System.Security.Cryptography;
using System.Text;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Tests.Journal;

/// <summary>Somebody changes a line and computes anew as many of the hashes as they think of.</summary>
public sealed class ForgeryTests : IDisposable
{
    private readonly LogBench _bench = new();
    private readonly long[] _at;
    private readonly string[] _lines;

    public ForgeryTests()
    {
        _at = _bench.ThreeLines();
        _lines = File.ReadAllLines(_bench.Segment);
    }

    [Fact]
    public void A_changed_body_without_its_hash_is_told_by_the_envelope() =>
        Expect(0, (body, envelope) => (Change(body), envelope), (0, Damage.BodyHash), (2, Damage.SubjectSequence));

    [Fact]
    public void A_changed_body_with_its_hash_breaks_both_chains_behind_it() =>
        Expect(0, (body, envelope) => (Change(body), envelope.Replace(Hash(body), Hash(Change(body)), StringComparison.Ordinal)), (1, Damage.LineLink), (2, Damage.BodyLink));

    [Fact]
    public void A_changed_envelope_breaks_the_benchs_chain_only() =>
        Expect(0, (body, envelope) => (body, envelope.Replace("\"body\"", "\"note\":1,\"body\"", StringComparison.Ordinal)), (1, Damage.LineLink));

    [Fact]
    public void Another_benchs_line_does_not_belong_here() =>
        Expect(2, (body, envelope) => (body, envelope.Replace(LogBench.BenchId, "OTHER", StringComparison.Ordinal)), (2, Damage.Bench));

    [Fact]
    public void A_sequence_that_repeats_is_told() =>
        Expect(2, (body, envelope) => (body, envelope.Replace("\"seq\":3", "\"seq\":2", StringComparison.Ordinal)), (2, Damage.Sequence));

    [Theory]
    [InlineData("\"n\":1", "\"n\":0")]
    [InlineData("\"off\":60", "\"off\":99999")]
    [InlineData("\"of\":\"JOB1\"", "\"of\":\"../JOB1\"")]
    [InlineData("\"events\":[", "\"events\":[{]")]
    [InlineData("\"at\":\"2026", "\"at\":\"20x6")]
    public void What_cannot_be_meant_is_no_line(string meant, string written) =>
        Expect(0, (body, envelope) =>
        {
            string changed = body.Replace(meant, written, StringComparison.Ordinal);
            return (changed, envelope.Replace(Hash(body), Hash(changed), StringComparison.Ordinal));
        }, (0, Damage.NotALine), (2, Damage.SubjectSequence));

    /// <summary>Forges one line, with a right hash of its own, and compares what an audit and an opening find.</summary>
    private void Expect(int line, Func<string, string, (string Body, string Envelope)> forge, params (int Line, Damage What)[] damage)
    {
        string[] fields = _lines[line].Split('\t');
        (string body, string envelope) = forge(fields[0], fields[1]);
        Assert.NotEqual((fields[0], fields[1]), (body, envelope));
        string start = body + "\t" + envelope;
        _lines[line] = start + "\t" + Hash(start);
        File.WriteAllText(_bench.Segment, string.Join('\n', _lines) + "\n");
        long moved = new FileInfo(_bench.Segment).Length - _at[3];
        Assert.Equal(damage.Select(d => (_at[d.Line] + (d.Line > line ? moved : 0), d.What)), JobLog.Scan(_bench.Path).OfType<ScannedDamage>().Select(d => (d.Offset, d.What)));
        _bench.DropIndex();
        Assert.Equal(damage[0].What, Assert.IsType<Damaged>(_bench.Refused()).What);
    }

    private static string Change(string body) => body.Replace("\"ab\"", "\"xy\"", StringComparison.Ordinal);

    private static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    public void Dispose() => _bench.Dispose();
}
