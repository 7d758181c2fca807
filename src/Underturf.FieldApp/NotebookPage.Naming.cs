using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>Naming conductor ends: while that is done it has the worker to itself; the answers are worked out again once it is left.</summary>
public sealed partial class NotebookPage
{
    private const string Waits = "The answers wait until the naming of ends is left.";

    /// <summary>Whether ends were being named when the page was drawn last.</summary>
    private bool named;

    private bool IsNaming => place == Place.Boxes && boxes is { Task: BoxTask.Name, Box: { } box } && log.TakesNotes && log.IsWhole && log.History.Now.Boxes.ContainsKey(log.History.Now.Identity.Of(box));

    /// <summary>From Now to the ends of a place.</summary>
    private void GoToNaming(string box)
    {
        boxes.Open(box);
        boxes.TurnTo(BoxTask.Name);
        Go(Place.Boxes);
    }

    /// <summary>Begins or leaves off where the page has turned to naming or away from it.</summary>
    private void FollowNaming()
    {
        if (IsNaming != named)
        {
            named = IsNaming;
            Away(named ? NameAsync : ThinkAgainAsync);
        }
    }

    /// <summary>Asks for the next round; what was asked before is given up.</summary>
    private Task NameAsync()
    {
        var mine = BeginAnew();
        if (state == "working")
        {
            Say("waiting", Waits);
        }

        var ask = boxes.Naming.Turn(log.History.Now.Identity.Of(boxes.Box!));
        return WorkOutAsync(boxes.Naming, () => Notebook.NameAsync(inHand.Bytes, ask, new Waiting(null, mine)), mine);
    }

    private async Task ThinkAgainAsync()
    {
        if (boxes.Naming.Working)
        {
            thinking.Cancel();
            boxes.Naming.GiveUp();
        }

        if (state == "waiting")
        {
            await ThinkAsync(Weighing);
        }
    }
}
