using ServiceRunner.Lines;
using ServiceRunner.Screens;
using ServiceRunner.Tests.Screens;

namespace ServiceRunner.Tests.Lines;

/// <summary>A screen that is only drawn can be heard: without its bars, its marks and columns said in words.</summary>
public class SheetWordsTests
{
    [Theory]
    [InlineData("  › Third wheel      in A2", "Marked: Third wheel, in A2")]
    [InlineData("    Third wheel      in A2", "Third wheel, in A2")]
    [InlineData(" ▲ Stored energy: hold it.", "Caution: Stored energy: hold it.")]
    [InlineData("Inspection  ━━━━━╌╌╌╌", "Inspection")]
    [InlineData("┃ Balance ┃ A1 ┃", "Balance, A1")]
    [InlineData("╭──────╮", "")]
    [InlineData("  ·  ", "")]
    [InlineData("Takes off: balance → A1", "Takes off: balance to A1")]
    public void A_row_is_read_out(string row, string said) => Assert.Equal(said, SheetWords.Row(row));

    [Fact]
    public void What_changed_on_a_drawn_screen_is_told()
    {
        using PaperBench bench = new();
        LineDialogue dialogue = new(bench.Shell);
        dialogue.Greeting("");
        bench.Shell.Go(new Drawn(bench.Shell));
        bench.Wait(TimeSpan.FromSeconds(2));
        Assert.Equal("Drawn. Marked: first, here. second, there. Enter: take it.", dialogue.Tick());
        bench.Wait(TimeSpan.FromSeconds(2));
        Assert.Equal("", dialogue.Tick());
        Assert.Equal(["first, here.", "Marked: second, there."], dialogue.Take("down"));
        bench.Wait(TimeSpan.FromSeconds(2));
        Assert.Equal(["Taken: second."], dialogue.Take(""));
    }

    private sealed class Drawn(Shell shell) : ScreenModel(shell)
    {
        private int _at;

        public override string Name => "Drawn";

        public override IReadOnlyList<ScreenAction> Actions =>
        [
            ScreenAction.Always("Enter", "take it", "Takes it.", () => Shell.Say($"Taken: {(_at == 0 ? "first" : "second")}")),
            ScreenAction.Always("Down", "", "Marks the next.", () => _at = 1),
        ];

        public override void Draw(Sheet sheet, int top, int rows)
        {
            sheet.Write(0, top, new string('━', 40));
            sheet.Write(1, top + 1, $"{(_at == 0 ? "›" : " ")} first      here");
            sheet.Write(1, top + 2, $"{(_at == 1 ? "›" : " ")} second     there");
        }
    }
}
