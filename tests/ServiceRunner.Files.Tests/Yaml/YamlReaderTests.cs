using System.Diagnostics;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Tests.Yaml;

public class YamlReaderTests
{
    [Fact]
    public void Every_value_keeps_its_line_and_column()
    {
        YMap root = Assert.IsType<YMap>(Read("a: 1\nb:\n  - x\n  - {c: 'y z'}\n", out _));
        Assert.Equal(new Place(1, 4), root["a"]!.At);
        YList list = Assert.IsType<YList>(root["b"]);
        Assert.Equal(new Place(3, 5), list.Items[0].At);
        Assert.Equal(new Place(4, 9), Assert.IsType<YMap>(list.Items[1])["c"]!.At);
        Assert.True(Assert.IsType<YText>(Assert.IsType<YMap>(list.Items[1])["c"]).Quoted);
    }

    [Fact]
    public void Windows_line_ends_change_nothing()
    {
        YMap root = Assert.IsType<YMap>(Read("a: 1\r\nb: two words\r\n", out List<Diagnostic> found));
        Assert.Equal(new YText(new Place(2, 4), "two words", false), root["b"]);
        Assert.Empty(found);
    }

    [Theory]
    [InlineData("a: [1, 2\nb: 3\n", "x.yaml:1:4: error yaml-syntax: a bracket or brace is opened here and not closed\n    Close it before the next key.\n")]
    [InlineData("a: {b: 1 c: 2}", "x.yaml:1:11: error yaml-syntax: the keys in braces go wrong here: a comma or } is missing\n    In braces, keys are parted by commas and end with }. It was opened in line 1, column 4.\n")]
    [InlineData("a:\n\tb: 1\n", "x.yaml:2:1: error yaml-syntax: a tab is used for indentation\n    Use blanks: two for each level.\n")]
    [InlineData("a:\n  - x\n\t- y\n", "x.yaml:3:1: error yaml-syntax: a tab is used for indentation\n    Use blanks: two for each level.\n")]
    [InlineData("a: \"open", "x.yaml:1:4: error yaml-syntax: a quotation mark is opened here and never closed\n    Close it.\n")]
    [InlineData("a: @x", "x.yaml:1:4: error yaml-syntax: a text cannot begin with this character\n    Put it into quotation marks.\n")]
    [InlineData("a: \"\\q\"", "x.yaml:1:4: error yaml-syntax: a backslash in double quotation marks is followed by a character that means nothing here\n    Use single quotation marks, or write the backslash twice.\n")]
    [InlineData("- a\nb: 1\n", "x.yaml:2:1: error yaml-syntax: a list goes on here with something that has no hyphen\n    Indent it under the list's last item, or begin it with a hyphen.\n")]
    [InlineData("a: 1\n- b\n", "x.yaml:2:1: error yaml-syntax: a key was expected here\n    Lines of one list of keys are indented alike, and each has a key and a colon.\n")]
    [InlineData("a: &b 1\nc: *b\n", "x.yaml:1:4: error yaml-plain: anchors (&) are not used here\n    Write the value where it is needed; a text that begins with & wants quotation marks.\n")]
    [InlineData("c: *b\n", "x.yaml:1:4: error yaml-plain: references (*) are not used here\n    Write the value again; a text that begins with * wants quotation marks.\n")]
    [InlineData("c: !!int 1\n", "x.yaml:1:4: error yaml-plain: tags (!) are not used here\n    Leave the tag out; a text that begins with ! wants quotation marks.\n")]
    [InlineData("a: 1\n---\nb: 2\n", "x.yaml:2:1: error yaml-plain: a second document begins here\n    One file holds one document: put this into a file of its own.\n")]
    [InlineData("[a]: 1\n", "x.yaml:1:2: error yaml-plain: a key is a plain word\n")]
    [InlineData("a: 1\na: 2\n", "x.yaml:2:1: error duplicate-key: the key 'a' stands here a second time; the first is in line 1\n    Take one of them out.\n")]
    [InlineData("# nothing\n", "x.yaml: error empty-file: the file is empty\n    A procedure begins with 'procedure:', a workshop with 'workshop:'.\n")]
    [InlineData("a: \"\\u202Eb\"", "x.yaml:1:4: error control-character: an unseen control character (U+202E) stands in this text\n    Type the text anew.\n")]
    public void What_is_wrong_is_said_in_plain_words(string text, string sentence)
    {
        Read(text, out List<Diagnostic> found);
        Assert.Equal(sentence, string.Concat(found.Select(DiagnosticText.Line)));
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{a: ")]
    [InlineData("- ")]
    [InlineData("? ")]
    public void A_million_openings_are_refused_at_once(string opening)
    {
        string text = string.Concat(Enumerable.Repeat(opening, 1_000_000));
        Stopwatch watch = Stopwatch.StartNew();
        Read(text, out List<Diagnostic> found);
        Assert.Contains(found, d => d.Code == "too-much");
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(5), $"took {watch.Elapsed}");
    }

    [Fact]
    public void Thirty_two_levels_are_read_and_thirty_three_are_not()
    {
        Assert.NotNull(Read(new string('[', 31) + "x" + new string(']', 31), out List<Diagnostic> found));
        Assert.Empty(found);
        Assert.Null(Read(new string('[', 32) + "x" + new string(']', 32), out found));
        Assert.Equal("values are nested more than 32 deep here", Assert.Single(found).Message);
    }

    [Fact]
    public void More_than_two_hundred_thousand_values_are_refused()
    {
        Assert.NotNull(Read("[" + string.Concat(Enumerable.Repeat("x,", 199_998)) + "]", out List<Diagnostic> found));
        Assert.Empty(found);
        Assert.Null(Read("[" + string.Concat(Enumerable.Repeat("x,", 200_000)) + "]", out found));
        Assert.Equal("the file has more than 200,000 values", Assert.Single(found).Message);
    }

    [Fact]
    public void Many_keys_in_one_place_take_no_quadratic_time()
    {
        string text = string.Concat(Enumerable.Range(0, 90_000).Select(i => $"k{i}: v\n")) + "k5: again\n";
        Stopwatch watch = Stopwatch.StartNew();
        Read(text, out List<Diagnostic> found);
        Assert.Equal("the key 'k5' stands here a second time; the first is in line 6", Assert.Single(found).Message);
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(5), $"took {watch.Elapsed}");
    }

    private static YNode? Read(string text, out List<Diagnostic> found)
    {
        found = [];
        return YamlReader.Read("x.yaml", text, found);
    }
}
