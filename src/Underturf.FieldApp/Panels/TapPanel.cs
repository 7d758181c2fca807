using Microsoft.AspNetCore.Components;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>A panel whose taps are stored: one after the other, and what kept one from being stored is said.</summary>
public abstract class TapPanel : ComponentBase
{
    /// <summary>Stores all that one tap says.</summary>
    [Parameter, EditorRequired]
    public Func<IReadOnlyList<Fact>, Task<Problem?>> StoreAll { get; set; } = null!;

    [Parameter, EditorRequired]
    public EventCallback SaveCopy { get; set; }

    /// <summary>Why the last tap was not stored.</summary>
    protected Problem? Trouble { get; set; }

    /// <summary>A tap is on its way to the store: the next one waits.</summary>
    protected bool Storing { get; private set; }

    /// <returns>Whether it was stored.</returns>
    protected Task<bool> StoreAsync(Fact fact) => StoreAsync([fact]);

    /// <returns>Whether they were stored.</returns>
    protected async Task<bool> StoreAsync(IReadOnlyList<Fact> facts)
    {
        if (Storing)
        {
            return false;
        }

        // The tap may have been on a button further in, which alone would be drawn anew.
        Storing = true;
        StateHasChanged();
        Trouble = await StoreAll(facts);
        Storing = false;
        StateHasChanged();
        return Trouble is null;
    }
}
