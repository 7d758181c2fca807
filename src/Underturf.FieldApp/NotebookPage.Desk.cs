namespace Underturf.FieldApp;

/// <summary>Going on where the page was killed: the place, the box, and what was typed and not stored.</summary>
public sealed partial class NotebookPage
{
    private string? keptDesk;

    /// <summary>What the device kept has been taken up: only then is it written over.</summary>
    private bool atDesk;

    /// <summary>Takes up what the device kept of the desk.</summary>
    private void TakeUpDesk()
    {
        (keptDesk, atDesk) = (log.Desk, true);
        if (keptDesk is null || KeptDesk.Read(keptDesk) is not { } kept)
        {
            return;
        }

        log.By = kept.By;
        if (kept.Property is not null && kept.Property == log.Document.Property)
        {
            place = Enum.TryParse<Place>(kept.Place, out var was) ? was : place;
            (draft, noting) = (kept.Note ?? draft, kept.Noting && kept.Note is not null && log.TakesNotes);
            TakeUpWater(kept);
            TakeUpSteps(kept);
            boxes.TakeUp(kept.Box, log.TakesNotes ? kept.Task : BoxTask.Look, kept.End ?? boxes.End);
            boxes.Naming.Draft = kept.Naming ?? boxes.Naming.Draft;
        }
    }

    private void TakeUpSteps(KeptDesk kept)
    {
        hand = log.TakesNotes ? kept.Ground ?? hand : hand;
        day.Draft = kept.Day ?? day.Draft;
        rework.IsOpen = kept.Rework;
        if (kept.Repair is { } thing && log.History.Now.Knows(thing))
        {
            repair.Open(thing);
        }
    }

    /// <summary>Keeps the desk where something on it has changed. What keeps it from being kept is said when a note is stored.</summary>
    private async Task KeepDeskAsync()
    {
        if (log.Refused is not null || !atDesk)
        {
            return;
        }

        var now = new KeptDesk(log.Document.Property, log.By, place.ToString(), noting, noting || draft.IsTouched ? draft : null, boxes.Box, boxes.Task, boxes.End)
        {
            Naming = boxes.Naming.Draft,
            Dry = water.Dry,
            Running = water.IsRunning,
            LeftAs = water.LeftAs,
            Told = water.Told,
            Ground = hand,
            Day = day.Draft,
            Rework = rework.IsOpen,
            Repair = repair.Thing,
        }.Write();
        if (now != keptDesk)
        {
            keptDesk = now;
            await Device.KeepDeskAsync(now);
        }
    }
}
