using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>Having the worker work something out for a desk.</summary>
public sealed partial class NotebookPage
{
    /// <summary>How many questions the worker was asked; it has one at a time, and a newer one ends the one before.</summary>
    private int asked;

    /// <summary>Asks, and shows the answer. What comes of it counts only while the desk asked nothing newer and nobody gave it up.</summary>
    /// <param name="mine">Ends it; whoever does that has said what comes instead.</param>
    private async Task WorkOutAsync<T>(Desk<T> desk, Func<Task<Outcome<T>>> ask, CancellationToken mine)
        where T : class
    {
        var (question, turn) = (desk.Begin(opened), ++asked);
        StateHasChanged();
        try
        {
            var answer = await ask();
            if (!mine.IsCancellationRequested && desk.IsLast(question))
            {
                EndOrGiveUp(desk, answer, turn);
                StateHasChanged();
            }
        }
        catch (OperationCanceledException) when (mine.IsCancellationRequested)
        {
            if (desk.IsLast(question))
            {
                desk.GiveUp();
            }
        }
    }

    private void EndOrGiveUp<T>(Desk<T> desk, Outcome<T> answer, int turn)
        where T : class
    {
        if (answer.Succeeded || turn == asked)
        {
            desk.End(answer);
        }
        else
        {
            desk.GiveUp();
        }
    }
}
