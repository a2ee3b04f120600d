using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports.Slips;

/// <summary>The owner's receipt as a page, a sheet of A5 for each job.</summary>
public sealed record HtmlReceipt(IReadOnlyList<Slip> Slips)
{
    /// <inheritdoc/>
    public override string ToString() => HtmlPage.Of(Slips is [var first, ..] ? $"{first.Workshop}: receipt {first.Number}" : "", SlipStyle.Receipt, Slips.Select(Article));

    private static Html Article(Slip slip) => Html.Of($"""
        <article>
        <header>
        <p class="workshop">{slip.Workshop}</p>
        <h1>Receipt {slip.Number}</h1>
        <p>{Days.Long(slip.BookedIn)}</p>
        </header>
        <dl>
        <dt>Piece</dt><dd><b>{slip.What}</b></dd>
        {slip.Lines.Select(l => Html.Of($"""
        <dt>{l.Name}</dt><dd>{l.Text}</dd>

        """))}{Html.If(!slip.Owner.IsNobody, () => Html.Of($"""
        <dt>Owner</dt><dd>{Owner(slip)}</dd>

        """))}</dl>
        <div class="sign"><p>Taken in by{Html.If(slip.By.Length > 0, () => Html.Of($": {slip.By}"))}</p><p>Handed in by</p></div>
        </article>

        """);

    private static IEnumerable<Html> Owner(Slip slip) =>
        new[] { slip.Owner.Name }.Concat(slip.Owner.Lines).Where(l => l.Length > 0).Select(l => Html.Of($"<span>{l}</span>"));
}

/// <summary>The tray's label as a page of a label's size, one for each job: the number is read from two metres.</summary>
public sealed record HtmlLabel(IReadOnlyList<Slip> Slips)
{
    /// <inheritdoc/>
    public override string ToString() => HtmlPage.Of(Slips is [var first, ..] ? $"Label {first.Number}" : "", SlipStyle.Label, Slips.Select(Article));

    private static Html Article(Slip slip) => Html.Of($"""
        <article>
        <h1 class="{Size(slip.Number)}">{slip.Number}</h1>
        <p class="what">{slip.What}</p>
        {Html.If(slip.Owner.Name.Length > 0, () => Html.Of($"""
        <p class="owner">{slip.Owner.Name}</p>

        """))}{Html.If(slip.Promised is not null, () => Html.Of($"""
        <p class="promised">Promised {Days.Long(slip.Promised!.Value)}</p>

        """))}</article>

        """);

    // A number that somebody made long must still fit on the label.
    private static string Size(string number) => number.Length switch { <= 10 => "large", <= 18 => "middle", _ => "small" };
}
