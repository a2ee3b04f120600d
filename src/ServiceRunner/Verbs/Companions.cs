using ServiceRunner.Diagnosis;
using ServiceRunner.Pedal;
using ServiceRunner.Screens;
using ServiceRunner.Voice;

namespace ServiceRunner.Verbs;

/// <summary>
/// What accompanies a bench from outside the screen: the voice, and presses that come from other programs. Both begin with
/// the first tick, when the first frame stands: looking for programs and opening a socket would be waited for otherwise.
/// </summary>
internal sealed class Companions(Shell shell, Action? bell, DiagnosticLog diagnosis) : IDisposable
{
    private Speaker? _speaker;
    private PedalSocket? _pedal;

    /// <summary>The program that plays tones; empty if none does.</summary>
    public string Player => _speaker?.Player ?? "";

    /// <summary>The program that speaks; empty if none does.</summary>
    public string Talker => _speaker?.Talker ?? "";

    /// <summary>To be called at each tick, before anything is told.</summary>
    public void Tick()
    {
        Speaker speaker = _speaker ?? Begin();
        while (_pedal?.TryTake(out PedalPress? press) == true) press.Answer(shell.Follow(press.Word));
        if (speaker.TakeNote() is { Length: > 0 } note) shell.Notice(note);
    }

    private Speaker Begin()
    {
        Speaker speaker = _speaker = new Speaker(shell.Session.Workshop.Voice, bell, diagnosis.Note);
        shell.AlarmTold = (urgency, words, about) => speaker.Alarm(urgency, words, about);
        shell.AlarmSettled = speaker.Settled;
        shell.StepTold = speaker.Step;
        shell.AgainTold = speaker.SayAgain;
        shell.QuietTold = quiet => speaker.Quiet = quiet;
        speaker.Quiet = shell.Quiet;
        if (!shell.Session.ReadsOnly && (_pedal = PedalSocket.Open(shell.Session.Folder, out string whyNot)) is null) shell.Notice(whyNot);
        return speaker;
    }

    public void Dispose()
    {
        _pedal?.Dispose();
        _speaker?.Dispose();
    }
}
