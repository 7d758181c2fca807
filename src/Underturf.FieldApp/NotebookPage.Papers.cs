using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>Papers: made by the worker from the notes that were thought about last, handed out as files.</summary>
public sealed partial class NotebookPage
{
    private readonly PaperDesk papers = new();
    private CancellationTokenSource making = new();

    private Task MakePapersAsync()
    {
        StopLocating();
        making.Dispose();
        making = new CancellationTokenSource();
        var mine = making.Token;
        papers.Turn(log.History);
        return WorkOutAsync(papers, () => Notebook.MakePapersAsync(inHand.Bytes, new Waiting(new Heard(share => HearOfPapers(share, mine)), mine)), mine);
    }

    private void GiveUpPapers()
    {
        making.Cancel();
        papers.GiveUp();
    }

    private void HearOfPapers(double reached, CancellationToken mine)
    {
        if (!mine.IsCancellationRequested)
        {
            papers.Share = reached;
            StateHasChanged();
        }
    }

    private Task HandOutPaperAsync(MadePaper paper) => Device.HandOutAsync(paper.FileName, paper.Bytes);
}
