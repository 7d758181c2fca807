namespace Underturf.FieldApp;

/// <summary>Going on where the page was killed, or where a log was left for another one: the place, the box, and what was typed and not stored.</summary>
public sealed partial class NotebookPage
{
    /// <summary>How the desks of other logs were left, by their property, and the same as it is kept.</summary>
    private readonly Dictionary<string, (KeptDesk Desk, string Written)> others = new(StringComparer.Ordinal);

    private string? keptDesk;

    /// <summary>Property of the log that the desk is of.</summary>
    private string? deskOf;

    /// <summary>What the device kept has been taken up: only then is it written over.</summary>
    private bool atDesk;

    /// <summary>Somebody has done something here; opening a page writes nothing.</summary>
    private bool touched;

    /// <summary>Takes up what the device kept of the desk.</summary>
    private void TakeUpDesk()
    {
        (keptDesk, atDesk) = (log.Desk, true);
        if (keptDesk is null || KeptDesk.Read(keptDesk) is not { } kept)
        {
            return;
        }

        log.By = kept.By;
        foreach (var desk in (kept.Others ?? []).Append(kept with { Others = null }))
        {
            if (desk.Property is { } of)
            {
                others[of] = (desk, desk.Write());
            }
        }

        if (kept.Property is not null && kept.Property == log.Document.Property)
        {
            place = Enum.TryParse<Place>(kept.Place, out var was) ? was : place;
            TurnDesk();
            noting = kept.Noting && kept.Note is not null && log.TakesNotes;
            sweeping = kept.Sweeping && place == Place.Stations && log.History.Now.Stations.Count > 0;
        }
    }

    /// <summary>The desk of the log in hand. What lay on that of another one stays with that.</summary>
    private void TurnDesk()
    {
        if (deskOf is { } before)
        {
            var left = Desk();
            others[before] = (left, left.Write());
        }

        (hand, draft, sweep, noting, sweeping) = (new GroundHand(), new NoteDraft(), BeginSweep(), false, false);
        boxes.Clear();
        water.Close();
        rework.Clear();
        repair.Clear();
        flow.Clear();
        day.Clear();
        deskOf = log.Document.Property;
        if (deskOf is not null && others.Remove(deskOf, out var kept))
        {
            TakeUp(kept.Desk);
        }
    }

    /// <summary>A log was taken off the device, and what lay on its desk with it.</summary>
    private void LeaveDesk(string property)
    {
        others.Remove(property);
        deskOf = deskOf == property ? null : deskOf;
    }

    private void TakeUp(KeptDesk kept)
    {
        (draft, sweep) = (kept.Note ?? draft, kept.Sweep ?? sweep);
        TakeUpWater(kept);
        hand = log.TakesNotes ? kept.Ground ?? hand : hand;
        day.Draft = kept.Day ?? day.Draft;
        rework.IsOpen = kept.Rework;
        if (kept.Repair is { } thing && log.History.Now.Knows(thing))
        {
            repair.Open(thing);
        }

        boxes.TakeUp(kept.Box, log.TakesNotes ? kept.Task : BoxTask.Look, kept.End ?? boxes.End);
        boxes.Naming.Draft = kept.Naming ?? boxes.Naming.Draft;
    }

    private KeptDesk Desk() => new(deskOf, log.By, place.ToString(), noting, noting || draft.IsTouched ? draft : null, boxes.Box, boxes.Task, boxes.End)
    {
        Sweep = sweep.Stations.Count > 0 ? sweep : null,
        Sweeping = sweeping,
        Naming = boxes.Naming.Draft,
        Dry = water.Dry,
        Running = water.IsRunning,
        LeftAs = water.LeftAs,
        Told = water.Told,
        Ground = hand,
        Day = day.Draft,
        Rework = rework.IsOpen,
        Repair = repair.Thing,
    };

    /// <summary>Somebody has touched the page: keeps the desk where something on it has changed, now and from now on after each drawing.</summary>
    private Task KeepDeskAsync()
    {
        touched = true;
        return KeepTouchedAsync();
    }

    /// <summary>A desk that nobody has touched is as it was kept. What keeps it from being kept is said when a note is stored.</summary>
    private async Task KeepTouchedAsync()
    {
        if (touched && DeskText(Desk()) is { } now && now != keptDesk)
        {
            keptDesk = now;
            await Device.KeepDeskAsync(now);
        }
    }

    /// <summary>A desk with those of the other logs, as it is kept; nothing where it cannot be.</summary>
    private string? DeskText(KeptDesk desk) => log.Refused is null && atDesk ? desk.Write([.. others.Values.Select(other => other.Written)]) : null;
}
