using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>The one page: opens a log, shows what it lets one say, the next move first. While it thinks it can be stopped, and a newer note begins it again.</summary>
public sealed partial class NotebookPage : IDisposable
{
    private const string Weighing = "Weighing every explanation against every reading…";

    private readonly LogInHand inHand = new();
    private CancellationTokenSource thinking = new();
    private OpenedLog? opened;
    private Problem? unreadable;
    private string logName = "";
    private string saying = "";
    private string state = "working";
    private double share;
    private bool fresh;

    public void Dispose() => thinking.Dispose();

    protected override Task OnInitializedAsync() => OpenOfferedAsync();

    private async Task OpenOfferedAsync()
    {
        if (inHand.IsEmpty)
        {
            Say("working", "Fetching the demo log…");
        }

        await TakeAsync("Demo log", await Notebook.FetchOfferedLogAsync());
    }

    private Task OpenPickedAsync(PickedLog picked) => TakeAsync(picked.Name, picked.Bytes);

    private async Task TakeAsync(string name, Outcome<ReadOnlyMemory<byte>> log)
    {
        if (!log.Succeeded)
        {
            thinking.Cancel();
            inHand.Drop();
            (opened, unreadable, logName) = (null, log.Problem, name);
            Say("failed", "");
            return;
        }

        var (step, asksForNewer) = (inHand.Take(log.Value), name == logName);
        logName = name;
        switch (step)
        {
            case LogStep.Same when state == "ready":
                Say("ready", $"{(asksForNewer ? "No newer note. " : "")}{Count(opened!.Answers.Questions.Count)}");
                return;
            case LogStep.Same when state == "working":
                return;
            case LogStep.Other:
                opened = null;
                break;
        }

        await ThinkAsync(step == LogStep.Newer ? "A newer note has come in. Working it out again…" : Weighing);
    }

    private Task AgainAsync() => ThinkAsync(Weighing);

    private void GiveUp()
    {
        thinking.Cancel();
        fresh = false;
        Say("stopped", opened is null ? "Stopped. The log is untouched." : "Stopped. What stands below was worked out before the newest notes.");
    }

    /// <summary>Whatever was being worked out is given up: only the newest notes count.</summary>
    private async Task ThinkAsync(string why)
    {
        var mine = BeginAnew();
        (share, unreadable, fresh) = (0, null, false);
        Say("working", why);
        try
        {
            Show(await Notebook.OpenAsync(inHand.Bytes, new Waiting(new Heard(s => Hear(s, mine)), mine)), mine);
        }
        catch (OperationCanceledException) when (mine.IsCancellationRequested)
        {
            // Whoever cancelled has said what comes instead.
        }
    }

    private CancellationToken BeginAnew()
    {
        thinking.Cancel();
        thinking.Dispose();
        thinking = new CancellationTokenSource();
        return thinking.Token;
    }

    private void Show(Outcome<OpenedLog> answer, CancellationToken mine)
    {
        if (mine.IsCancellationRequested)
        {
            return;
        }

        (opened, unreadable) = answer.Succeeded ? (answer.Value, null) : (opened, answer.Problem);
        (share, fresh) = (1, answer.Succeeded);
        if (!answer.Succeeded)
        {
            Say("failed", "");
        }
    }

    /// <summary>The newest answer has been laid out.</summary>
    private void Stand()
    {
        if (fresh)
        {
            Say("ready", Count(opened!.Answers.Questions.Count));
        }
    }

    private void Hear(double reached, CancellationToken mine)
    {
        if (!mine.IsCancellationRequested)
        {
            share = reached;
            StateHasChanged();
        }
    }

    private void Say(string now, string text)
    {
        (state, saying) = (now, text);
        StateHasChanged();
    }

    private static string Count(int questions) => questions switch
    {
        0 => "No open question.",
        1 => "1 open question.",
        _ => $"{questions} open questions.",
    };

    /// <summary>At once, on the thread that tells.</summary>
    private sealed class Heard(Action<double> hear) : IProgress<double>
    {
        public void Report(double value) => hear(value);
    }
}
