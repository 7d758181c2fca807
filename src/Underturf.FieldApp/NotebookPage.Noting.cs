using Microsoft.AspNetCore.Components;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>Noting, taking back, saving a copy, and going from place to place.</summary>
public sealed partial class NotebookPage
{
    private readonly BoxDesk boxes = new();
    private GroundHand hand = new();
    private NoteDraft draft = new();
    private ElementReference noteButton;
    private StoredNote? last;
    private Problem? undone;
    private Place place = Place.Now;
    private bool noting;
    private bool sweeping;

    /// <summary>The figure of a sweep that is being typed.</summary>
    private NoteDraft sweep = BeginSweep();
    private bool returning;
    private (PropertyHistory? History, OpenedLog? Opened, IReadOnlyList<StationLine> Lines) lined = (null, null, []);

    /// <summary>On a phone a note or a sweep has the screen to itself.</summary>
    private string AtWork => noting ? "at-work noting" : sweeping || (place == Place.Boxes && boxes.IsAtWork) ? "at-work" : "";

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
        if (returning && !noting)
        {
            returning = false;
            await noteButton.FocusAsync(preventScroll: true);
        }

        await CountPhotosAsync();
        await KeepTouchedAsync();
    }

    private void Go(Place to)
    {
        (place, noting) = (to, false);
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
        Navigation.NavigateTo($"#question-{id}");
    }

    /// <summary>Stores what the form says and puts the form away.</summary>
    private async Task<Problem?> StoreAsync(IReadOnlyList<Fact> facts)
    {
        var trouble = await KeepAllAsync(facts, draft.At);
        if (trouble is null)
        {
            StandWhere(draft.Sought);
            draft = new NoteDraft();
            CloseNote();
        }

        return trouble;
    }

    /// <summary>Stores a fact, then says so. Nothing is said to be stored before it is.</summary>
    private Task<Problem?> KeepAsync(Fact fact) => KeepNewAsync(_ => fact);

    /// <param name="write">Writes the fact, given an id for a thing that nobody has noted before.</param>
    private async Task<Problem?> KeepNewAsync(Func<string, Fact> write)
    {
        var stored = await log.NoteAsync(write);
        if (!stored.Succeeded)
        {
            return stored.Problem;
        }

        Stored([stored.Value]);
        return null;
    }

    private void Stored(IReadOnlyList<Entry> kept)
    {
        var words = NoteWords.Say(kept[0].Fact!, log.History.Now);
        (last, undone) = (new StoredNote([.. kept.Select(entry => entry.Id.ToString())], kept.Count == 1 ? words : $"{words}, and {kept.Count - 1} more", Struck: false), null);
        Away(() => KeepSameAsync(pulls: false));
        ThinkOn();
    }

    /// <summary>Undo strikes the note that was stored last; redo restores it.</summary>
    private async Task TurnLastAsync()
    {
        if (last is not { } note)
        {
            return;
        }

        foreach (var entry in note.Entries)
        {
            var stored = await log.NoteAsync(note.Struck ? new RestoreFact { Entry = entry } : new StrikeFact { Entry = entry });
            undone = stored.Problem;
            if (!stored.Succeeded)
            {
                return;
            }
        }

        last = note with { Struck = !note.Struck };
        Away(() => KeepSameAsync(pulls: false));
        ThinkOn();
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
