using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>The one page: opens a log, shows what it lets one say, the next move first. While it thinks it can be stopped, and a newer note begins it again.</summary>
public sealed partial class NotebookPage : IDisposable
{
    private const string Weighing = "Weighing every explanation against every reading…";

    private readonly LogInHand inHand = new();
    private DeviceLog log = null!;
    private CancellationTokenSource thinking = new();
    private OpenedLog? opened;
    private Problem? unreadable;
    private string saying = "";
    private string state = "working";
    private double share;
    private bool fresh;

    /// <summary>Somebody chose a log: the offered one no longer takes its place.</summary>
    private bool picked;

    public void Dispose()
    {
        thinking.Dispose();
        making.Dispose();
        locating.Dispose();
    }

    protected override async Task OnInitializedAsync()
    {
        log = new DeviceLog(Device);
        home = new PushAndPull(log, Server);
        boxes.Turned = StateHasChanged;
        Say("working", "Opening the notes of this device…");
        var book = FetchBookAsync();
        await log.OpenDeviceAsync();
        await book;
        TakeUpDesk();
        if (log.Refused is null)
        {
            Device.Listen(property => InvokeAsync(() => HearOtherPageAsync(property)));
        }

        // A log that is kept here needs no server; what the server has newer joins it when it comes.
        var kept = log.IsEmpty ? Task.CompletedTask : TurnAsync(asksForNewer: false);
        await ComeHomeAsync();
        await CompleteAsync();
        await kept;
    }

    private Task OpenPickedAsync(PickedLog file)
    {
        picked = true;
        return TakeAsync(file.Name, file.Bytes);
    }

    private async Task OpenKeptAsync(string property)
    {
        (picked, unreadable) = (true, null);
        await log.OpenKeptAsync(property);
        await TurnAsync(asksForNewer: false);
        await KeepSameAsync();
    }

    private async Task TakeAsync(string name, Outcome<ReadOnlyMemory<byte>> bytes)
    {
        unreadable = bytes.Problem;
        if (bytes.Succeeded)
        {
            var asksForNewer = name == log.Source;
            await log.TakeInAsync(name, bytes.Value);
            await TurnAsync(asksForNewer);
        }
        else if (log.IsEmpty)
        {
            thinking.Cancel();
            Say("failed", "");
        }
    }

    /// <summary>Thinks about the log as it is now, unless that is what it does or has done.</summary>
    private async Task TurnAsync(bool asksForNewer)
    {
        var goesOn = log.IsWhole || await ReadWholeAsync();
        var step = inHand.Take(log.Document.Property, log.Document.ToBytes());
        if (deskOf != log.Document.Property || step == LogStep.Other)
        {
            TurnDesk();
        }

        if (!goesOn)
        {
            return;
        }

        switch (step)
        {
            case LogStep.Same when state == "ready":
                Say("ready", $"{(asksForNewer ? "No newer note. " : "")}{Count(opened!.Answers.Questions.Count)}");
                return;
            case LogStep.Same when state == "working" && !inHand.IsEmpty:
            case LogStep.Same when state == "stopped" && !asksForNewer:
                // It is on its way; or somebody has given it up, and no note has come in since.
                return;
            case LogStep.Other:
                ForgetAnswers();
                break;
        }

        await ThinkAsync(step == LogStep.Newer ? "A newer note has come in. Working it out again…" : Weighing);
    }

    /// <summary>What was worked out of a log that is no longer in hand.</summary>
    private void ForgetAnswers()
    {
        (opened, last) = (null, null);
        GiveUpPapers();
        papers.Clear();
        StopLocating();
        looking.Clear();
    }

    /// <summary>A log was taken off the device: where it was in hand, none is now.</summary>
    private void Leave(string property)
    {
        LeaveDesk(property);
        if (log.Document.Property is null)
        {
            ForgetAnswers();
            TurnDesk();
            inHand.Clear();
            thinking.Cancel();
            (unreadable, fresh) = (null, false);
            Say("failed", "");
        }
    }

    private Task AgainAsync() => log.IsWhole ? ThinkAsync(Weighing) : TurnAsync(asksForNewer: false);

    private void GiveUp()
    {
        thinking.Cancel();
        fresh = false;
        Say("stopped", opened is null ? "Stopped. The log is untouched." : "Stopped. What stands below was worked out before the newest notes.");
    }

    /// <summary>Whatever was being worked out is given up: only the newest notes count.</summary>
    private async Task ThinkAsync(string why)
    {
        if (IsNaming)
        {
            named = true;
            Say("waiting", Waits);
            Away(CompleteAsync);
            await NameAsync();
            return;
        }

        var mine = BeginAnew();
        (share, unreadable, fresh) = (0, null, false);
        Say("working", why);
        try
        {
            if (!await CompleteAsync())
            {
                mine.ThrowIfCancellationRequested();
                Say("stopped", "Nothing is worked out before all of the page is here.");
                return;
            }

            mine.ThrowIfCancellationRequested();
            Show(await Notebook.OpenAsync(inHand.Bytes, new Waiting(new Heard(s => Hear(s, mine)), mine)), mine);
        }
        catch (OperationCanceledException) when (mine.IsCancellationRequested)
        {
            // Whoever cancelled has said what comes instead.
        }
    }

    private CancellationToken BeginAnew()
    {
        StopLocating();
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

        StateHasChanged();
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
