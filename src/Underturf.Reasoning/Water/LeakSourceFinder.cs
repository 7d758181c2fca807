using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>Finds all that could run while nothing should, and in which readings of the meter each would show.</summary>
/// <param name="doubted">Ids of the isolation valves that may not hold.</param>
internal sealed class LeakSourceFinder(WaterCase owner, IReadOnlyList<WaterReading> readings, IReadOnlyList<string> doubted)
{
    /// <summary>Isolation valves of which nobody knows whether they lie before a thing: beyond so many the rest counts as beside the way.</summary>
    private const int MostUnknown = 4;

    private readonly WaterPaths paths = new(owner);
    private readonly LeakSigns signs = new(owner);
    private IReadOnlyList<int> passing = [];

    private PropertyView View => owner.View;

    /// <param name="through">Numbers of the doubted valves that do not hold.</param>
    public IReadOnlyList<LeakSource> Find(params IReadOnlyList<int> through)
    {
        passing = through;
        return
        [
            .. owner.Water.Of(WaterScope.Valve).SelectMany(f => Valves().SelectMany(v => Valve(f, v.Id, v.Station))),
            .. owner.Water.Of(WaterScope.Main).SelectMany(f => owner.Graph.Pieces.Count > 0 ? owner.Graph.Pieces.Select(p => Piece(f, p)) : Mainline(f)),
            .. owner.Water.Of(WaterScope.Meter).Select(f => new LeakSource(f, f.Id, "the meter", null, null, f.Odds, FedBy(f, [], (_, _) => true), owner.IsCured(f, [], Moment.Last), LeakWay.Known)),
        ];
    }

    /// <summary>For each reading: by what is shut, and by what of that does not hold.</summary>
    private Fed FedBy(WaterFault fault, IReadOnlyCollection<string> things, Func<WaterReading, IReadOnlySet<string>, bool> isFed) =>
        new(readings.Select(r => owner.IsCured(fault, things, r.Moment) ? Passage.None : Passes(r, isFed)));

    private Passage Passes(WaterReading reading, Func<WaterReading, IReadOnlySet<string>, bool> isFed)
    {
        if (isFed(reading, reading.Shut))
        {
            return Passage.Open;
        }

        bool Without(params int[] open) => isFed(reading, WaterPaths.Without(reading.Shut, [.. open.Select(o => doubted[o])]));
        return passing.Where(p => reading.Shut.Contains(doubted[p])).ToList() switch
        {
            [var one] => Without(one) ? new Passage(PassageKind.Through, one) : Passage.None,
            [var one, var two] => (Without(one), Without(two)) switch
            {
                (true, true) => new Passage(PassageKind.EitherOf, one, two),
                (true, false) => new Passage(PassageKind.Through, one),
                (false, true) => new Passage(PassageKind.Through, two),
                _ => Without(one, two) ? new Passage(PassageKind.BothOf, one, two) : Passage.None,
            },
            _ => Passage.None,
        };
    }

    /// <summary>Valves as noted, and of a station without one the valve that nobody has found.</summary>
    private IEnumerable<(string Id, string? Station)> Valves() =>
    [
        .. View.Valves.Where(v => !owner.Graph.Masters.Contains(v.Key)).Select(v => (v.Key, v.Value.Station is { } s ? View.Identity.Of(s) : null)),
        .. View.Stations.Keys.Where(s => !View.ValvesOf(s).Any()).Select(s => (s, (string?)s)),
    ];

    private IEnumerable<LeakSource> Valve(WaterFault fault, string id, string? station)
    {
        string[] things = station is null ? [id] : [id, station];
        var odds = fault.Odds * signs.OfValve(fault, View.PositionOf(id));
        var unknown = owner.Graph.Knows(id) ? [] : Unknown(things);
        return EquallyLikely([.. Sets(unknown).Select(before =>
            new LeakSource(fault, id, Called(id, station), station, null, odds, FedBy(fault, things, (r, shut) => IsFed(id, things, station, r, shut, before)), owner.IsCured(fault, things, Moment.Last), [new LeakWay(before)]))]);
    }

    /// <summary>By its station, where it has one: that is how people know it.</summary>
    private string Called(string id, string? station) => station is null ? View.Name(id)
        : View.ValvesOf(station).Count() > 1 ? $"{View.Name(id)} of {View.Name(station)}"
        : $"valve of {View.Name(station)}";

    private LeakSource Piece(WaterFault fault, MainPiece piece)
    {
        var fed = FedBy(fault, piece.Pipes, (r, shut) => paths.Reached(r, shut).Contains(piece.Pipes[0]));
        var metres = piece.Metres > 0 ? piece.Metres : owner.Water.MainMetres / owner.Graph.Pieces.Count;
        return new LeakSource(fault, piece.Pipes[0], Between(piece), null, piece, fault.Odds * metres / 100 * signs.OfPiece(fault, piece), fed, owner.IsCured(fault, piece.Pipes, Moment.Last), LeakWay.Known);
    }

    /// <summary>The mainline as a whole, before or beyond each valve that was shut.</summary>
    private IEnumerable<LeakSource> Mainline(WaterFault fault)
    {
        var odds = fault.Odds * owner.Water.MainMetres / 100 * signs.OfPiece(fault, null);
        var hasMaster = View.Controllers.Values.Any(c => c.Master is not null);
        bool[] beyondMaster = hasMaster ? [false, true] : [false];
        return EquallyLikely([.. from before in Sets(Unknown([])) from beyond in beyondMaster select Mainline(fault, odds, before, beyond)]);
    }

    private LeakSource Mainline(WaterFault fault, double odds, IReadOnlyList<string> before, bool beyondMaster)
    {
        var fed = FedBy(fault, [], (r, shut) => !before.Any(shut.Contains) && (!beyondMaster || !r.IsIdle));
        var place = string.Concat("the mainline", beyondMaster ? " beyond the master valve" : string.Empty, before.Count == 0 ? string.Empty : $" beyond {string.Join(" and ", before.Select(View.Name))}");
        return new LeakSource(fault, "mainline", place, null, null, odds, fed, owner.IsCured(fault, [], Moment.Last), [new LeakWay(before, beyondMaster)]);
    }

    /// <summary>Every set of isolation valves that may lie before a thing.</summary>
    private static IReadOnlyList<IReadOnlyList<string>> Sets(IReadOnlyList<string> unknown) =>
    [
        .. Enumerable.Range(0, 1 << Math.Min(unknown.Count, MostUnknown))
            .Select(set => (IReadOnlyList<string>)[.. unknown.Where((_, k) => k < MostUnknown && ((set >> k) & 1) == 1)]),
    ];

    /// <summary>One thing in several ways, equally likely beforehand; those that no reading tells apart are one.</summary>
    private static IEnumerable<LeakSource> EquallyLikely(IReadOnlyList<LeakSource> ways) =>
        ways.GroupBy(s => s.Signature).Select(g => g.First() with { Odds = g.Sum(s => s.Odds) / ways.Count, Ways = [.. g.SelectMany(s => s.Ways)] });

    /// <summary>Isolation valves that were shut for some reading, of which nobody has said what lies behind.</summary>
    private List<string> Unknown(string[] things) =>
        [.. readings.SelectMany(r => r.Shut).Where(View.IsolationValves.ContainsKey).Distinct().Order(StringComparer.Ordinal).Where(i => owner.LiesBehind(i, things) is null)];

    private bool IsFed(string id, string[] things, string? station, WaterReading reading, IReadOnlySet<string> shut, IReadOnlyList<string> before) =>
        !shut.Contains(id)
        && (station is null || (!shut.Contains(station) && !reading.Together.Contains(station)))
        && (owner.Graph.Knows(id)
            ? paths.Reached(reading, shut).Contains(id) && (paths.MasterIsPiped(station) || paths.MasterLets(station, reading))
            : paths.MasterLets(station, reading) && !before.Any(shut.Contains) && !shut.Any(i => owner.LiesBehind(i, things) == true));

    private string Between(MainPiece piece) => piece.Ends.Select(View.Name).ToList() switch
    {
        [] => "the mainline",
        [var one] => $"the mainline from {one} on",
        [.. var first, var last] => $"the mainline between {string.Join(", ", first)} and {last}",
    };
}
