using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports.Estimates;

/// <summary>An estimate with the condition of the piece as a page, a sheet of A4 for each job in the usual case.</summary>
public sealed record HtmlEstimate(IReadOnlyList<Estimate> Estimates)
{
    /// <inheritdoc/>
    public override string ToString() => HtmlPage.Of(Estimates is [var first, ..] ? $"{first.Workshop}: {first.Title.ToLowerInvariant()} {first.Number}" : "", EstimateStyle.Sheet, Estimates.Select(Article));

    private static Html Article(Estimate estimate) => Html.Of($"""
        <article>
        <header>
        <p class="workshop">{estimate.Workshop}</p>
        <h1>{estimate.Title} {estimate.Number}</h1>
        <p>{Days.Long(estimate.Day)}</p>
        </header>
        {Html.If(estimate.IsDraft, () => Html.Of($"""
        <p class="notice">{EstimateWords.Draft}</p>

        """))}<dl>
        <dt>Piece</dt><dd><b>{estimate.What}</b></dd>
        {Named("Serial", estimate.Serial)}{Named("Owner", estimate.Owner)}</dl>
        <h2>Condition</h2>
        {Html.If(estimate.OnArrival.Length > 0, () => Html.Of($"<dl>\n{Named("On arrival", estimate.OnArrival)}</dl>\n"))}{Found(estimate)}{Html.If(estimate.AlsoSeen.Count > 0, () => Html.Of($"""
        <p class="also">Also seen:</p>
        <ul>{estimate.AlsoSeen.Select(l => Html.Of($"<li>{l.Where}: {l.What} ({l.Sure})</li>"))}</ul>

        """))}<h2>Estimate</h2>
        {Lines(estimate)}{Html.If(estimate.AgreedBefore.Count > 0, () => Html.Of($"""
        <p>{EstimateWords.AgreedBefore}: {string.Join("; ", estimate.AgreedBefore)}.</p>

        """))}{Html.If(estimate.Limit.Length > 0, () => Html.Of($"""
        <p>{EstimateWords.Limit}: <b>{estimate.Limit}</b>.</p>

        """))}<section class="answer">
        <h2>Your answer</h2>
        <ul class="choices">{EstimateWords.Choices.Select(c => Html.Of($"""<li><span class="box"></span>{c}</li>"""))}</ul>
        <div class="remarks"><p>Remarks</p></div>
        <div class="sign"><p>Date</p><p>Signature</p></div>
        </section>
        </article>

        """);

    private static Html Named(string name, string text) => Html.If(text.Length > 0, () => Html.Of($"""
        <dt>{name}</dt><dd>{text}</dd>

        """));

    private static Html Found(Estimate estimate) =>
        estimate.Condition.Count > 0 ? Html.Of($"""
            <table><thead><tr><th class="where">Where</th><th>What</th><th class="sure">How sure</th></tr></thead><tbody>
            {estimate.Condition.Select(l => Html.Of($"<tr><td>{l.Where}</td><td>{l.What}</td><td>{l.Sure}</td></tr>"))}</tbody></table>

            """)
        : Html.If(estimate.AlsoSeen.Count == 0, () => Html.Of($"<p>{EstimateWords.NothingFound}</p>\n"));

    private static Html Lines(Estimate estimate) => estimate.Rows.Count == 0 ? Html.Of($"<p>{EstimateWords.NothingToDecide}</p>\n") : Html.Of($"""
        <table><thead><tr><th class="tick">Yes</th><th class="tick">No</th><th>What was found</th><th>What is to be done</th><th class="time">Time</th><th class="price">Price</th></tr></thead><tbody>
        {estimate.Rows.Select(r => Html.Of($"""<tr><td><span class="box"></span></td><td><span class="box"></span></td><td>{r.Finding}</td><td>{r.Done}</td><td class="number">{r.Time}</td><td class="number">{r.Price}</td></tr>"""))}</tbody>
        <tbody><tr class="total"><td colspan="5">Total</td><td class="number">{estimate.Total}</td></tr></tbody></table>
        {Html.If(estimate.NotInTotal.Length > 0, () => Html.Of($"<p>{estimate.NotInTotal}</p>\n"))}
        """);
}
