using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning;

/// <summary>Everything that is tied, placed by its ties; and the property with the places that only ties give.</summary>
public sealed class TiedPlaces
{
    private readonly PropertyView view;
    private readonly TapingPractice taping;
    private readonly Sight sight;
    private readonly bool us;
    private readonly Dictionary<string, TiedPlace> known = new(StringComparer.Ordinal);

    /// <summary>Standard deviation of the worst direction, of things placed by ties.</summary>
    private readonly Dictionary<string, double> spreads = new(StringComparer.Ordinal);

    private TiedPlaces(PropertyHistory history, PracticeBook book)
    {
        (view, taping, us) = (history.Now, book.Taping, history.Facts.UsesUsUnits);
        sight = new Sight(view);
        var left = Tie.All(history).GroupBy(tie => tie.Thing).ToList();
        var order = left.Select(thing => thing.Key).ToList();
        while (left.Count > 0)
        {
            // A box can be tied to a box that is tied itself: what waits for none comes first, then what can be placed all the same.
            var ready = left.Where(thing => thing.All(tie => tie.From is not null || left.All(other => other.Key != tie.Mark))).ToList();
            var able = ready.Count > 0 ? ready : [.. left.Where(thing => thing.Count(tie => Used(tie) is not null) > 1).Take(1)];
            var next = able.Count > 0 ? able : left;
            foreach (var found in next.Select(Place).ToList())
            {
                known[found.Thing] = found;
            }

            left = [.. left.Except(next)];
        }

        All = [.. order.Select(thing => known[thing])];
        View = Placed();
    }

    /// <summary>Things with ties, in their natural order.</summary>
    public IReadOnlyList<TiedPlace> All { get; }

    /// <summary>The property as it stands, with the positions of boxes, valves and controllers that nobody placed but ties do.</summary>
    public PropertyView View { get; }

    public static TiedPlaces Of(PropertyHistory history, PracticeBook book) => new(history, book);

    public TiedPlace? Find(string thing) => known.GetValueOrDefault(view.Identity.Of(thing));

    /// <summary>"the north-east corner of the hall".</summary>
    public string Mark(Tie tie) => MarkWords.Of(view, tie.Mark, tie.From);

    /// <summary>The place that a thing has by its ties alone; nothing where the plan has it by hand.</summary>
    public TiedPlace? Only(string thing) => view.PositionOf(thing) is null && Find(thing) is { State: TieState.Placed } place ? place : null;

    /// <summary>What does not agree, for all to see.</summary>
    public IEnumerable<Problem> Problems =>
        All.SelectMany(place => place.Doubts.Select(doubt => new Problem(place.Name, doubt.Reason, doubt.Remedy, Severity.Notice)));

    /// <summary>One thing, tied or not, with the marks that are best to tape it from.</summary>
    public TiedPlace Of(string thing)
    {
        var id = view.Identity.Of(thing);
        var place = Find(id) ?? new TiedPlace(id, view.Name(id), TieState.NotTied, [], Grade.Unknown, null, view.PositionOf(id), [], []);
        var finder = new MarkFinder(View, taping, sight, id);
        return place with
        {
            BestMarks = (place.Spots is [var likeliest, ..] ? likeliest.At : place.NotedAt) is { } at ? finder.Best(at) : null,
            Deciding = place is { State: TieState.TwoPlaces, Spots: [var one, var other] } ? finder.Deciding(one.At, other.At) : null,
        };
    }

    private TiedPlace Place(IGrouping<string, Tie> thing)
    {
        var used = thing.Select(Used).OfType<UsedTie>().ToList();
        var noted = view.PositionOf(thing.Key) is { } at ? (at, taping.PlacedMetres.Of(GradeOf(thing.Key))) : ((Position At, double SpreadMetres)?)null;
        var place = new TiedPlace(thing.Key, view.Name(thing.Key), used.Count == 0 ? TieState.NoMark : TieState.Ring, [], Grade.Unknown, null, noted?.At, [], []);
        if (used.Count < 2 || used.All(tie => tie.At == used[0].At))
        {
            return place with { Ties = Lines(thing, used, null, []), Doubts = OffRing(used, noted) };
        }

        var found = new TieSolver(taping, sight, view, us, used, noted).Solve();
        spreads[thing.Key] = Math.Sqrt(found.SpreadFactor * Math.Max(found.Fix.Spread.Xx, found.Fix.Spread.Yy));
        return place with
        {
            State = found.Decided ? TieState.Placed : TieState.TwoPlaces,
            Spots = found.Spots,
            Grade = found.Used.Max(i => used[i].Grade),
            Decided = found.Why,
            Ties = Lines(thing, used, found.Fix, found.Used),
            Doubts = found.Doubts,
        };
    }

    private UsedTie? Used(Tie tie)
    {
        if (tie.From is { } at)
        {
            return Used(tie, at, taping.MarkMetres.Of(GradeOf(tie.Mark)), GradeOf(tie.Mark));
        }

        return known.TryGetValue(tie.Mark, out var mark) && mark.Spot is { } spot ? Used(tie, spot.At, spreads[tie.Mark], mark.Grade) : null;
    }

    private UsedTie Used(Tie tie, Position at, double markMetres, Grade markGrade)
    {
        var taped = taping.SpreadMetres(tie);
        var range = new RangeTo(at.EastMetres, at.NorthMetres, tie.Distance.Metres, Math.Sqrt((taped * taped) + (markMetres * markMetres)));
        return new UsedTie(tie, MarkWords.Of(view, tie.Mark, tie.From), at, range, (Grade)Math.Max((int)tie.Grade, (int)markGrade));
    }

    private List<TieLine> Lines(IEnumerable<Tie> ties, List<UsedTie> used, RangeFix? fix, IReadOnlyList<int> counted) => [.. ties.Select(tie =>
    {
        var number = used.FindIndex(u => ReferenceEquals(u.Tie, tie));
        double? off = number >= 0 && fix is not null ? used[number].Range.OffMetres(fix.XMetres, fix.YMetres) : null;
        var spread = number >= 0 ? used[number].Range.SpreadMetres : taping.SpreadMetres(tie);
        return new TieLine(tie.Mark, MarkWords.Of(view, tie.Mark, tie.From), number >= 0 ? used[number].At : null, tie.Distance.Metres, spread, tie.Grade, off, number >= 0 && fix is not null && !counted.Contains(number));
    })];

    /// <summary>A single tie against the place on the plan.</summary>
    private List<TieDoubt> OffRing(List<UsedTie> used, (Position At, double SpreadMetres)? noted)
    {
        if (used is not [var tie] || noted is not { } hint)
        {
            return [];
        }

        var off = Math.Abs(tie.Range.OffMetres(hint.At.EastMetres, hint.At.NorthMetres));
        var spread = Math.Sqrt((hint.SpreadMetres * hint.SpreadMetres) + (tie.Range.SpreadMetres * tie.Range.SpreadMetres));
        return off > taping.DisagreeSpreads * spread ? [new TieDoubt($"the tie from {tie.From} is {Tie.Say(off, us)} off its place on the plan", "Tape it again, or move it on the plan")] : [];
    }

    private Grade GradeOf(string id) => view.Ground.TryGetValue(id, out var ground) ? ground.Sure
        : view.Boxes.TryGetValue(id, out var box) ? box.Sure
        : view.Valves.TryGetValue(id, out var valve) ? valve.Sure
        : view.Controllers.TryGetValue(id, out var controller) ? controller.Sure : Grade.Unknown;

    private PropertyView Placed() => All.Any(place => Only(place.Thing) is not null)
        ? view with
        {
            Boxes = view.Boxes.ToDictionary(b => b.Key, b => Only(b.Key)?.Spot is { } spot ? b.Value with { Position = spot.At } : b.Value, StringComparer.Ordinal),
            Valves = view.Valves.ToDictionary(v => v.Key, v => Only(v.Key)?.Spot is { } spot ? v.Value with { Position = spot.At } : v.Value, StringComparer.Ordinal),
            Controllers = view.Controllers.ToDictionary(c => c.Key, c => Only(c.Key)?.Spot is { } spot ? c.Value with { Position = spot.At } : c.Value, StringComparer.Ordinal),
        }
        : view;
}
