using Microsoft.AspNetCore.Components;
using Underturf.Property;

namespace Underturf.FieldApp;

/// <summary>Noting, taking back, saving a copy, and going from place to place.</summary>
public sealed partial class NotebookPage
{
    private readonly BoxDesk boxes = new();
    private GroundHand hand = new();
    private NoteDraft draft = new();
    private ElementReference noteButton;
    private Place place = Place.Now;
    private bool noting;
    private bool sweeping;

    /// <summary>The figure of a sweep that is being typed.</summary>
    private NoteDraft sweep = BeginSweep();
    private bool returning;

    /// <summary>What was shown when the page was drawn last; nothing where it is to be seen from its head in any case.</summary>
    private object? shown;
    private (PropertyHistory? History, OpenedLog? Opened, IReadOnlyList<StationLine> Lines) lined = (null, null, []);

    /// <summary>On a phone a note or a sweep has the screen to itself.</summary>
    private string AtWork => noting ? "at-work noting" : sweeping || (place == Place.Boxes && boxes.IsAtWork) ? "at-work" : "";

    private object Shown => (place, noting, sweeping, water.Dry, water.IsRunning, IsReworking, IsRepairing, IsFlowing, IsOrdering);

    /// <summary>Made anew where a note or an answer came in.</summary>
    private IReadOnlyList<StationLine> StationLines
    {
        get
        {
            if (!ReferenceEquals(lined.History, log.History) || !ReferenceEquals(lined.Opened, opened))
            {
                lined = (log.History, opened, StationLine.All(log.History, opened));
            }

            return lined.Lines;
        }
    }

    /// <summary>What was typed and not stored comes back; else the form begins afresh.</summary>
    private void BeginNote() => BeginNoteWith(draft.IsTouched ? draft : new NoteDraft());

    private void BeginNoteWith(NoteDraft begun)
    {
        (draft, noting, undone) = (begun, true, null);
        BreakOffSweep();
        _ = KeepDeskAsync();
    }

    private void CloseNote()
    {
        (noting, returning) = (false, true);
        _ = KeepDeskAsync();
    }

    /// <summary>A keyboard goes on from the button that opened the form, once that stands there again.</summary>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        FollowNaming();
        FollowLocating();
        FollowSteps();
        FollowHead(firstRender);
        if (returning && !noting)
        {
            returning = false;
            await noteButton.FocusAsync(preventScroll: true);
        }

        await CountPhotosAsync();
        await KeepTouchedAsync();
    }

    /// <summary>What is opened, and what one comes back to, is seen from its head, wherever what stood there before was scrolled to.</summary>
    private void FollowHead(bool firstRender)
    {
        var turned = !Equals(shown, Shown);
        shown = Shown;
        if (turned && !firstRender)
        {
            Device.ShowHead();
        }
    }

    private void Go(Place to)
    {
        (place, noting, shown) = (to, false, null);
        water.Close();
        if (to != Place.Stations)
        {
            BreakOffSweep();
        }

        _ = KeepDeskAsync();
    }

    /// <summary>A sweep that is left for something else is over; it goes on where it was when it is begun again.</summary>
    private void BreakOffSweep()
    {
        if (sweeping)
        {
            Sweep(false);
        }
    }

    private void GoToQuestion(string id)
    {
        Go(Place.Now);
        shown = Shown;
        Navigation.NavigateTo($"#question-{id}");
    }

    /// <summary>Nothing typed yet. The panel is not asked: it begins by reading the practice book, for which no page should wait before it can note.</summary>
    private static NoteDraft BeginSweep() => new() { Kind = NoteKind.Reading, How = StationLine.StationOhms };

    private void Sweep(bool on)
    {
        sweeping = on;
        ThinkOn();
    }

    private async Task HearOtherPageAsync(string property)
    {
        if (property == log.Document.Property && await log.RefreshAsync())
        {
            ThinkOn();
        }
    }

    /// <summary>Thinks about the newest notes while the hand that noted goes on; not between two readings of a sweep.</summary>
    private void ThinkOn()
    {
        StateHasChanged();
        if (!sweeping)
        {
            Away(() => TurnAsync(asksForNewer: false));
        }
    }

    /// <summary>Begins something that nobody waits for; where it fails the page says so.</summary>
    private void Away(Func<Task> work) => _ = AwayAsync(work);

    private async Task AwayAsync(Func<Task> work)
    {
        try
        {
            await work();
        }
        catch (Exception failure)
        {
            await DispatchExceptionAsync(failure);
        }
    }
}
