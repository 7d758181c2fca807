using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>Where hidden things lie: worked out only while a place shows it, and after everything else that the worker is asked.</summary>
public sealed partial class NotebookPage
{
    private readonly LocatingDesk looking = new();
    private CancellationTokenSource locating = new();

    /// <summary>What is looked for: what is chosen on Ground, else what somebody noted about last.</summary>
    private HiddenName? LookedFor => opened?.Hidden.FirstOrDefault(h => h.Id == hand.Seeking?.Thing) ?? opened?.Hidden.Where(h => h.LastNoted is not null).MaxBy(h => h.LastNoted);

    private LookNow? Looks => opened is { Hidden.Count: > 0 } notes
        ? new LookNow(notes.Hidden.Count, LookedFor, LookedFor is { } thing && looking.Ask?.Thing == thing.Id ? looking.Answer?.Answer : null)
        : null;

    private LocateAsk? Wanted => state != "ready" || papers.Working || IsNaming ? null : place switch
    {
        Place.Ground when hand.Seeking is { } seek && opened!.Hidden.Any(h => h.Id == seek.Thing) => new LocateAsk(seek.Thing, seek.Stands),
        Place.Now when !day.Draft.IsOpen && LookedFor is { } thing => new LocateAsk(thing.Id, hand.Seeking?.Stands),
        _ => null,
    };

    /// <summary>Asks where something lies as soon as a place shows it and the worker has nothing else to do.</summary>
    private void FollowLocating()
    {
        if (Wanted is { } ask && !looking.Has(ask, opened!))
        {
            Away(() => LocateAsync(ask));
        }
    }

    private Task LocateAsync(LocateAsk ask)
    {
        StopLocating();
        locating.Dispose();
        locating = new CancellationTokenSource();
        var mine = locating.Token;
        looking.Turn(ask);
        return WorkOutAsync(looking, () => Notebook.LocateAsync(inHand.Bytes, ask, new Waiting(null, mine)), mine);
    }

    private void StopLocating()
    {
        if (looking.Working)
        {
            locating.Cancel();
            looking.GiveUp();
        }
    }

    /// <summary>Whoever has noted something of a search stands there now: the next stop is planned from there.</summary>
    private void StandWhere(SeekNote? noted)
    {
        if (hand.Seeking is { } seek && noted?.Where is [.., var at])
        {
            seek.Choose(0);
            seek.Stands = at;
        }
    }

    /// <summary>From Now to placing the first thing.</summary>
    private void PlaceFirst() => PlaceNow(new PlacingDraft());

    private void PlaceController()
    {
        var controller = new PlacingDraft();
        controller.Choose(GroundWords.Controller, log.History.Now);
        PlaceNow(controller);
    }

    private void PlaceNow(PlacingDraft begun)
    {
        hand.Place(begun);
        Go(Place.Ground);
    }

    /// <summary>From Now to the ground where something may lie.</summary>
    private void GoToHidden(string thing)
    {
        hand.Seek(thing);
        Go(Place.Ground);
    }
}
