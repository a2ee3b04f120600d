using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>
/// What was done in a job as one page that needs nothing beside it: for the owner, and for a colleague who reviews. It
/// is well-formed, runs nothing and loads nothing.
/// </summary>
/// <param name="Stories">What was done; more than one where several jobs bear the number.</param>
public sealed record HtmlReport(IReadOnlyList<JobStory> Stories)
{
    /// <summary>Writes it.</summary>
    public override string ToString()
    {
        EmbeddedPictures pictures = new(Picture);
        return HtmlPage.Of(Title, ReportStyle.Sheet, Stories.Select(s => Article(s, pictures)), Stories.Any(s => s.Job.Photos.Count > 0));
    }

    /// <summary>A kept picture's bytes by its hash; null if it is missing or was changed.</summary>
    public Func<string, byte[]?> Picture { get; init; } = _ => null;

    private string Title => Stories is [var first, ..] ? $"{first.Workshop}: job {first.Job.Number}" : "";

    private static Html Article(JobStory story, EmbeddedPictures pictures) => Html.Of($"""
        <article>
        {Head(story)}{Summary(story)}{FindingTables.Findings(story, pictures)}{FindingTables.OwnersWord(story)}{ExceptionTables.Deviations(story)}{WorkTables.Stages(story)}{WorkTables.Soaks(story)}{OilTables.Of(story)}{WorkTables.Rates(story)}{ExceptionTables.Parts(story)}{ExceptionTables.Marks(story)}{FindingTables.Pictures(story, pictures)}{ExceptionTables.Owed(story)}{Foot(story)}</article>

        """);

    private static Html Head(JobStory story)
    {
        Job job = story.Job;
        return Html.Of($"""
            <header>
            <p class="workshop">{story.Workshop}</p>
            <h1>{job.What}</h1>
            </header>
            {Html.If(story.ReadOnlyUpTo.Length > 0, () => Html.Of($"""<p class="notice"><b>This report is not the whole job.</b> {story.ReadOnlyUpTo}</p>"""))}
            <dl>
            <dt>Job</dt><dd><b>{job.Number}</b></dd>
            {Row("Owner", story.Owner)}<dt>Booked in</dt><dd>{Day(job.OpenedAt.Wall)}</dd>
            <dt>Stands</dt><dd><b>{JobWords.Of(job.Phase)}</b> since {Day(job.Phase.Since.Wall)}</dd>
            {IntakeWords.Lines(job.Intake).Select(l => Row(l.Name, l.Text))}{Row("Because", Why(job.Phase))}{Row("Done by", string.Join(", ", story.People.Select(p => p.Name.Length > 0 ? $"{p.Name} ({p.Initials})" : p.Initials)))}{job.Procedures.Select(p => Row("Worked by", $"{p.Title}, revision {p.Revision}"))}{Agreed(story)}</dl>

            """);
    }

    private static IEnumerable<Html> Agreed(JobStory story) => story.Kept.Select(e => e switch
    {
        JobEvent.EstimateNoted x => Row("Estimate", x.Text),
        JobEvent.ConsentNoted x => Row("The owner's answer", x.Text),
        _ => default,
    });

    private static string Why(Phase phase) => phase switch
    {
        Phase.Paused x => x.Why,
        Phase.Held x => $"{x.Detail}; it lies {x.Condition}{(x.Until is { } day ? string.Create(CultureInfo.InvariantCulture, $"; until {day:yyyy-MM-dd}") : "")}",
        Phase.Stopped x => x.Reason,
        Phase.Aborted x => x.Reason,
        _ => "",
    };

    private static Html Summary(JobStory story)
    {
        (int done, int passedOver, int all) = story.Progress;
        int served = story.Points.Count(p => p.State == PointState.Served), toServe = served + story.Points.Count(p => p.State == PointState.NotServed);
        int uncertain = story.Soaks.Count(s => !s.Certain);
        return Html.Of($"""
            <h2>In short</h2>
            <ul class="figures">
            <li><b>{done} of {all}</b> steps done{Html.If(passedOver > 0, () => Html.Of($", {passedOver} passed over"))}</li>
            {Html.If(toServe > 0, () => Html.Of($"<li><b>{served} of {toServe}</b> oiling points served</li>"))}{Html.If(story.Soaks.Count > 0, () => Html.Of($"<li><b>{story.Soaks.Count}</b> baths and waits timed{Html.If(uncertain > 0, () => Html.Of($", {uncertain} by the wall clock"))}</li>"))}<li><b>{story.Findings.Count}</b> {Noun(story.Findings.Count, "finding")}</li>
            <li><b>{story.Deviations.Count}</b> {Noun(story.Deviations.Count, "deviation")}</li>
            </ul>
            <p>{(story.Owed.IsNothing ? "Nothing is owed." : $"Owed: {story.OwedBriefly}.")}{Html.If(story.Deviations.Count == 0, () => Html.Of($" Nothing was done other than as written."))}</p>
            {Html.If(story.Facts.Any(), () => Html.Of($"""
            <h3>What was answered about the movement</h3>
            <table><tbody>{story.Facts.Select(f => Html.Of($"""<tr><td>{f.Question}</td><td class="who">{f.Answer}</td></tr>"""))}</tbody></table>

            """))}
            """);
    }

    private static Html Foot(JobStory story) => Html.Of($"""
        <footer>
        <p>Entered in the log of this job: {Times.Count(story.Job.Log.Count, "entry")}, {story.Job.TakenBack.Count} of them taken back. Times are those of the workshop's clock as they were written down.</p>
        <p>Head of the journal: <code>{story.Head}</code></p>
        <p>This hash stands for every line of the workshop's journal up to the moment of this report: if one of them is later changed, left out, added or moved, the journal no longer gives this hash, though it cannot say whether what was entered is true.</p>
        </footer>

        """);

    private static Html Row(string what, string text) => Html.If(text.Length > 0, () => Html.Of($"""
        <dt>{what}</dt><dd>{text}</dd>

        """));

    private static string Noun(int count, string noun) => Times.Count(count, noun)[(Times.Count(count, noun).IndexOf(' ', StringComparison.Ordinal) + 1)..];

    internal static string Day(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
