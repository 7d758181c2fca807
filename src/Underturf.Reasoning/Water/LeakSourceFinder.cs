using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>Finds all that could run while nothing should, and in which readings of the meter each would show.</summary>
internal sealed class LeakSourceFinder(WaterCase owner, IReadOnlyList<WaterReading> readings)
{
    /// <summary>Isolation valves of which nobody knows whether they lie before a thing: beyond so many the rest counts as beside the way.</summary>
    private const int MostUnknown = 4;

    private readonly Dictionary<string, HashSet<string>> reached = new(StringComparer.Ordinal);
    private readonly LeakSigns signs = new(owner);

    private PropertyView View => owner.View;

    public IReadOnlyList<LeakSource> Find() =>
    [
        .. owner.Water.Of(WaterScope.Valve).SelectMany(f => Valves().SelectMany(v => Valve(f, v.Id, v.Station))),
        .. owner.Water.Of(WaterScope.Main).SelectMany(f => owner.Graph.Pieces.Count > 0 ? owner.Graph.Pieces.Select(p => Piece(f, p)) : Mainline(f)),
        .. owner.Water.Of(WaterScope.Meter).Select(f => new LeakSource(f, f.Id, "the meter", null, null, f.Odds, new Fed(readings.Select(r => !owner.IsCured(f, [], r.Moment))), owner.IsCured(f, [], Moment.Last))),
    ];

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
        {
            var fed = new Fed(readings.Select(r => IsFed(id, things, station, r, before) && !owner.IsCured(fault, things, r.Moment)));
            return new LeakSource(fault, id, Called(id, station), station, null, odds, fed, owner.IsCured(fault, things, Moment.Last));
        })]);
    }

    /// <summary>By its station, where it has one: that is how people know it.</summary>
    private string Called(string id, string? station) => station is null ? View.Name(id)
        : View.ValvesOf(station).Count() > 1 ? $"{View.Name(id)} of {View.Name(station)}"
        : $"valve of {View.Name(station)}";

    private LeakSource Piece(WaterFault fault, MainPiece piece)
    {
        var fed = new Fed(readings.Select(r => Reached(r).Contains(piece.Pipes[0]) && !owner.IsCured(fault, piece.Pipes, r.Moment)));
        var metres = piece.Metres > 0 ? piece.Metres : owner.Water.MainMetres / owner.Graph.Pieces.Count;
        return new LeakSource(fault, piece.Pipes[0], Between(piece), null, piece, fault.Odds * metres / 100 * signs.OfPiece(fault, piece), fed, owner.IsCured(fault, piece.Pipes, Moment.Last));
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
        var fed = new Fed(readings.Select(r => !before.Any(r.Shut.Contains) && (!beyondMaster || r.Station is not null) && !owner.IsCured(fault, [], r.Moment)));
        var place = string.Concat("the mainline", beyondMaster ? " beyond the master valve" : string.Empty, before.Count == 0 ? string.Empty : $" beyond {string.Join(" and ", before.Select(View.Name))}");
        return new LeakSource(fault, "mainline", place, null, null, odds, fed, owner.IsCured(fault, [], Moment.Last));
    }

    /// <summary>Every set of isolation valves that may lie before a thing.</summary>
    private static IReadOnlyList<IReadOnlyList<string>> Sets(IReadOnlyList<string> unknown) =>
    [
        .. Enumerable.Range(0, 1 << Math.Min(unknown.Count, MostUnknown))
            .Select(set => (IReadOnlyList<string>)[.. unknown.Where((_, k) => k < MostUnknown && ((set >> k) & 1) == 1)]),
    ];

    /// <summary>One thing in several ways, equally likely beforehand; those that no reading tells apart are one.</summary>
    private static IEnumerable<LeakSource> EquallyLikely(IReadOnlyList<LeakSource> ways) =>
        ways.GroupBy(s => s.Signature).Select(g => g.First() with { Odds = g.Sum(s => s.Odds) / ways.Count });

    /// <summary>Isolation valves that were shut for some reading, of which nobody has said what lies behind.</summary>
    private List<string> Unknown(string[] things) =>
        [.. readings.SelectMany(r => r.Shut).Where(View.IsolationValves.ContainsKey).Distinct().Order(StringComparer.Ordinal).Where(i => owner.LiesBehind(i, things) is null)];

    private bool IsFed(string id, string[] things, string? station, WaterReading reading, IReadOnlyList<string> before) =>
        !reading.Shut.Contains(id)
        && (station is null || !reading.Shut.Contains(station))
        && (owner.Graph.Knows(id)
            ? Reached(reading).Contains(id) && (MasterIsPiped(station) || MasterLets(station, reading))
            : MasterLets(station, reading) && !before.Any(reading.Shut.Contains) && !reading.Shut.Any(i => owner.LiesBehind(i, things) == true));

    private bool MasterIsPiped(string? station) => MasterOf(station) is { } master && owner.Graph.Knows(master);

    /// <summary>A normally closed master valve lets water to the others only while a station of its controller runs.</summary>
    private bool MasterLets(string? station, WaterReading reading) => MasterOf(station) is not { } master || (reading.Station is { } running && MasterOf(running) == master);

    private string? MasterOf(string? station) => station is not null && View.Stations.TryGetValue(station, out var known) && View.Controllers.TryGetValue(View.Identity.Of(known.Controller), out var controller) && controller.Master is { } master
        ? View.Identity.Of(master)
        : null;

    private HashSet<string> Reached(WaterReading reading)
    {
        var open = MasterOf(reading.Station);
        var key = $"{open}|{string.Join('|', reading.Shut.Order(StringComparer.Ordinal))}";
        if (!reached.TryGetValue(key, out var set))
        {
            reached[key] = set = owner.Graph.Reached(id => reading.Shut.Contains(id) || (owner.Graph.Masters.Contains(id) && id != open));
        }

        return set;
    }

    private string Between(MainPiece piece) => piece.Ends.Select(View.Name).ToList() switch
    {
        [] => "the mainline",
        [var one] => $"the mainline from {one} on",
        [.. var first, var last] => $"the mainline between {string.Join(", ", first)} and {last}",
    };
}
