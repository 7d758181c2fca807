using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>Storing what was noted, and taking it back. What is stored leaves the desk in the same step, so that no page brings it back to be stored twice.</summary>
public sealed partial class NotebookPage
{
    private StoredNote? last;
    private Problem? undone;

    /// <summary>Stores what the form says and puts the form away.</summary>
    private async Task<Problem?> StoreAsync(IReadOnlyList<Fact> facts)
    {
        var trouble = await KeepAsync(facts, draft.At, desk => desk with { Note = null, Noting = false });
        if (trouble is null)
        {
            StandWhere(draft.Sought);
            draft = new NoteDraft();
            CloseNote();
        }

        return trouble;
    }

    /// <summary>A fact that leaves the desk as it lies: a photo of the form that stays open and names it as noted, a paper that was handed out.</summary>
    private Task<Problem?> KeepAsideAsync(Fact fact) => KeepAsync([fact], at: null, desk => desk);

    /// <summary>A reading of the sweep, which goes on at the station after that.</summary>
    private Task<Problem?> KeepReadAsync(Fact fact)
    {
        var next = BeginSweep();
        next.TurnTo(StationLines.SkipWhile(line => !sweep.Stations.Contains(line.Id)).Skip(1).FirstOrDefault()?.Id, next.Unit);
        return KeepAsync([fact], at: null, desk => desk with { Sweep = next });
    }

    private Task<Problem?> KeepEndAsync(Func<string, Fact> write) => KeepAsync([write], at: null, desk => desk with { End = boxes.End.Next() });

    private Task<Problem?> KeepOnGroundAsync(Func<string, Fact> write) => KeepAsync([write], at: null, desk => desk with { Ground = hand.Done() });

    /// <summary>Stores all that one tap says; undo takes all of it back.</summary>
    private Task<Problem?> KeepAllAsync(IReadOnlyList<Fact> facts) => KeepAsync(facts, at: null, desk => facts.Aggregate(desk, (left, fact) => left.Without(fact)));

    private Task<Problem?> KeepAsync(IReadOnlyList<Fact> facts, DateTimeOffset? at, Func<KeptDesk, KeptDesk> left) =>
        KeepAsync([.. facts.Select(fact => (Func<string, Fact>)(newId => PartNote.Named(fact, newId)))], at, left);

    /// <summary>Stores facts, then says so. Nothing is said to be stored before it is.</summary>
    /// <param name="writes">Each writes a fact, given an id for a thing that nobody has noted before.</param>
    /// <param name="at">When it was so; the time of noting where nothing is given.</param>
    /// <param name="left">What lies on the desk once they are stored.</param>
    private async Task<Problem?> KeepAsync(IReadOnlyList<Func<string, Fact>> writes, DateTimeOffset? at, Func<KeptDesk, KeptDesk> left)
    {
        if (writes.Count == 0)
        {
            return null;
        }

        var desk = DeskText(left(Desk()));
        var stored = await log.NoteAllAsync(writes, at, desk);
        if (!stored.Succeeded)
        {
            return stored.Problem;
        }

        keptDesk = desk ?? keptDesk;
        Stored(stored.Value);
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

        var stored = await log.NoteAllAsync([.. note.Entries.Select(entry => (Func<string, Fact>)(_ => note.Struck ? new RestoreFact { Entry = entry } : new StrikeFact { Entry = entry }))]);
        undone = stored.Problem;
        if (stored.Succeeded)
        {
            last = note with { Struck = !note.Struck };
            Away(() => KeepSameAsync(pulls: false));
            ThinkOn();
        }
    }
}
