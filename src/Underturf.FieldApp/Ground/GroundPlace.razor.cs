using Microsoft.AspNetCore.Components;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>The plan of the property beside everything on it in words: tap a thing to see what is known of it, place one, move one, measure.</summary>
public sealed partial class GroundPlace
{
    private GroundPlan plan = new([], []);
    private IReadOnlyList<GroundMark> marks = [];
    private IReadOnlyList<Tie> ties = [];
    private TiedPlaces? tied;
    private PropertyHistory? planned;
    private OpenedLog? marked;
    private GroundList? list;
    private bool drawn;
    private bool mapped;
    private bool left;

    [Parameter, EditorRequired]
    public PropertyHistory History { get; set; } = null!;

    /// <summary>What the notes let one say; nothing until that is worked out.</summary>
    [Parameter]
    public OpenedLog? Opened { get; set; }

    /// <summary>What the hand is at: kept by the page.</summary>
    [Parameter, EditorRequired]
    public GroundHand Hand { get; set; } = null!;

    [Parameter]
    public bool TakesNotes { get; set; }

    /// <summary>Stores a fact that is written when the id for a new thing is known; nothing where it is stored, else what kept it from being.</summary>
    [Parameter, EditorRequired]
    public Func<Func<string, Fact>, Task<Problem?>> Store { get; set; } = null!;

    [Parameter, EditorRequired]
    public EventCallback SaveCopy { get; set; }

    [Parameter, EditorRequired]
    public EventCallback<NoteDraft> Note { get; set; }

    [Parameter, EditorRequired]
    public EventCallback<string> Question { get; set; }

    /// <summary>Told the id of a place that is to be made dry.</summary>
    [Parameter]
    public EventCallback<string> Dry { get; set; }

    private bool Feet => History.Facts.UsesUsUnits;

    /// <summary>On a phone the map makes room for what the hand is at.</summary>
    private bool Busy => (!Hand.IsLooking && (Hand.Seeking is null || Sought is not null)) || plan.NameOf(Hand.Chosen) is not null;

    public void Dispose()
    {
        left = true;
        if (mapped)
        {
            Map.Close();
        }
    }

    protected override void OnParametersSet()
    {
        if (!ReferenceEquals(planned, History) || !ReferenceEquals(marked, Opened))
        {
            (planned, marked, drawn) = (History, Opened, false);
            tied = TiedPlaces.Of(History, PracticeBook.Default);
            plan = GroundPlan.Of(tied);
            ties = Tie.All(History);
            marks = Opened is null ? [] : GroundMark.Of(Opened.Answers, History.Now);
        }
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            await Map.ReadyAsync();
            if (left)
            {
                return;
            }

            Map.Open("ground-map", History.Facts.Property?.Name ?? "", Feet, tap => _ = InvokeAsync(() => Take(tap)));
            mapped = true;
            await FindBackdropAsync();
        }

        if (mapped && !drawn && !left)
        {
            drawn = true;
            Map.Draw(plan);
            Map.Mark(heated is null ? GroundSign.Of(marks) : []);
            Map.Tie(GroundTie.Of(History, tied!));
            Redraw();
        }

        DrawLikely();
    }

    private void Take(GroundTap tap)
    {
        Hand.Take(tap, plan);
        Redraw();
        StateHasChanged();
        if (Hand.Laying?.Picture is { } laid && !ReferenceEquals(laid, backdrop))
        {
            _ = KeepBackdropAsync();
        }
    }

    private void TakeMiddle() => Take(Map.Middle());

    private void Choose(string id)
    {
        Hand.Look(id);
        Redraw();
    }

    private async Task CloseCardAsync()
    {
        var was = Hand.Chosen;
        Choose("");
        if (list is not null && was is not null)
        {
            await list.FocusAsync(was);
        }
    }

    private void BeginPlacing(PlacingDraft draft)
    {
        Hand.Place(draft);
        Redraw();
    }

    private IReadOnlyList<Tie> TiesOf(string id) => [.. ties.Where(tie => tie.Thing == id)];

    private void BeginTying(string thing)
    {
        Hand.Tie(thing);
        Redraw();
    }

    /// <summary>Stores a tie, then asks for the next mark.</summary>
    private async Task<Problem?> StoreTieAsync(Fact tie)
    {
        var trouble = await Store(_ => tie);
        if (trouble is null)
        {
            BeginTying(Hand.Tying!.Thing);
            drawn = false;
            StateHasChanged();
        }

        return trouble;
    }

    private void BeginMeasuring()
    {
        Hand.Measure();
        Redraw();
    }

    private void PutAway()
    {
        Hand.Look(Hand.Placing?.Thing ?? Hand.Chosen);
        LayBackdrop();
        Redraw();
    }

    /// <summary>What is drawn over the plan: the ring around what is chosen, the points in hand.</summary>
    private void Redraw()
    {
        if (mapped && !left)
        {
            var (points, closed, words) = Hand.Sketch(Feet);
            var of = Hand.IsLooking ? Hand.Chosen : Hand.Placing?.Thing ?? Hand.Tying?.Thing;
            Map.Choose(of is null ? -1 : plan.Features.ToList().FindIndex(thing => thing.Id == of));
            Map.Sketch(points, closed, words);
        }
    }

    /// <summary>Stores what was placed, then shows its card.</summary>
    private async Task<Problem?> StoreAsync(PlacingDraft draft)
    {
        var id = draft.Thing;
        var trouble = await Store(newId =>
        {
            id ??= newId;
            return draft.ToFact(newId, History.Now).Value;
        });
        if (trouble is null)
        {
            Hand.Look(id);
            drawn = false;
            StateHasChanged();
        }

        return trouble;
    }
}
