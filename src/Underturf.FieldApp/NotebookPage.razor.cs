using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>The one page: opens a log, shows what it lets one say, the next move first.</summary>
public sealed partial class NotebookPage
{
    private OpenedLog? opened;
    private Problem? unreadable;
    private string logName = "";
    private string progress = "";
    private string state = "working";

    protected override Task OnInitializedAsync() => OpenOfferedAsync();

    private async Task OpenOfferedAsync()
    {
        Begin("Demo log", "Fetching the demo log…");
        await OpenAsync(await Notebook.FetchOfferedLogAsync());
    }

    private Task OpenPickedAsync(PickedLog picked)
    {
        Begin(picked.Name, "Reading the log…");
        return OpenAsync(picked.Bytes);
    }

    private void Begin(string name, string saying)
    {
        (opened, unreadable, logName, progress, state) = (null, null, name, saying, "working");
        StateHasChanged();
    }

    private async Task OpenAsync(Outcome<ReadOnlyMemory<byte>> log)
    {
        if (!log.Succeeded)
        {
            (unreadable, progress, state) = (log.Problem, "", "failed");
            return;
        }

        progress = "Weighing every explanation against every reading…";
        StateHasChanged();
        opened = await Notebook.OpenAsync(log.Value);
        (progress, state) = (Count(opened.Answers.Questions.Count), "ready");
    }

    private static string Count(int questions) => questions switch
    {
        0 => "No open question.",
        1 => "1 open question.",
        _ => $"{questions} open questions.",
    };
}
