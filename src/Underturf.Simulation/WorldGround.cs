using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Quantities;

namespace Underturf.Simulation;

/// <summary>
/// The ground of a made-up property: boxes on a tree of cables, as wires follow a main, stations at the ends, and what a first walk notes of them.
/// </summary>
internal sealed class WorldGround(WorldShape shape, SeededGenerator chance, Action<Fact> note)
{
    private readonly SeededGenerator odd = chance.Fork("odd");
    private readonly List<Position> places = [];

    public void Lay()
    {
        note(new PropertyFact { Name = "A made-up property", Zone = "Etc/GMT+6" });
        note(new ControllerFact { Id = "c", Terminals = Math.Max(48, shape.Stations ?? 0), Position = new Position(0, 0) });
        var boxes = shape.Stations is { } many ? Math.Max(4, many / 3) : 4 + chance.NextInt(8);
        var parents = shape.Stations is null ? Scattered(boxes) : AlongMains(boxes);
        var stations = shape.Stations ?? 6 + chance.NextInt(15);
        var ends = Enumerable.Range(0, stations).Select(_ => chance.NextInt(boxes)).ToArray();
        for (var s = 0; s < stations; s++)
        {
            note(new StationFact { Id = $"s{s + 1}", Controller = "c", Terminal = s + 1, Waters = [WorldGenerator.Place($"s{s + 1}")] });
        }

        LayCables(parents, ends);
        NoteValves(ends);
        NoteSpares(boxes);
    }

    /// <summary>Boxes anywhere, joined in any order.</summary>
    private int[] Scattered(int boxes)
    {
        var parents = new int[boxes];
        for (var b = 0; b < boxes; b++)
        {
            parents[b] = b == 0 ? -1 : chance.NextInt(Math.Min(b + 1, 4)) is 0 ? -1 : chance.NextInt(b);
            note(new BoxFact { Id = $"b{b}", Position = new Position(20 + (chance.NextDouble() * 200), chance.NextDouble() * 200) });
        }

        return parents;
    }

    /// <summary>Boxes outward from the controller, each joined to the nearest that is nearer to it, as wires lie along mains.</summary>
    private int[] AlongMains(int boxes)
    {
        var wide = MetresBetweenBoxes * Math.Sqrt(boxes);
        var controller = new Position(0, 0);
        places.AddRange(Enumerable.Range(0, boxes)
            .Select(_ => new Position(5 + (chance.NextDouble() * wide), chance.NextDouble() * wide))
            .OrderBy(p => p.DistanceMetresTo(controller)));
        var parents = new int[boxes];
        for (var b = 0; b < boxes; b++)
        {
            note(new BoxFact { Id = $"b{b}", Position = places[b] });
            parents[b] = Enumerable.Range(-1, b + 1).MinBy(p => places[b].DistanceMetresTo(p < 0 ? controller : places[p]));
        }

        return parents;
    }

    private const double MetresBetweenBoxes = 35;

    /// <summary>A taped run along mains is a fifth longer than the straight line between its ends.</summary>
    private double Taped(int[] parents, int b) => places.Count == 0
        ? 20 + (chance.NextDouble() * 120)
        : 1.2 * places[b].DistanceMetresTo(parents[b] < 0 ? new Position(0, 0) : places[parents[b]]);

    private void LayCables(int[] parents, int[] ends)
    {
        for (var b = 0; b < parents.Length; b++)
        {
            var carried = Enumerable.Range(0, ends.Length).Where(s => Passes(parents, ends[s], b)).Select(s => $"s{s + 1}").ToList();
            if (carried.Count > 0)
            {
                var taped = chance.NextDouble() < 0.5;
                note(new CableFact
                {
                    Id = $"k{b}",
                    From = parents[b] < 0 ? "c" : $"b{parents[b]}",
                    To = $"b{b}",
                    Carries = carried,
                    Length = taped ? new Length(Math.Max(1, Math.Round(Taped(parents, b)))) : null,
                    Gauge = WireSize.FromAwg(Gauge()),
                    CommonGauge = WireSize.FromAwg(14),
                    Sure = taped ? Grade.Measured : Grade.Estimated,
                });
            }
        }
    }

    /// <summary>A later phase often went on with other wire.</summary>
    private int Gauge() => shape.OtherGaugeShare > 0 && odd.NextDouble() < shape.OtherGaugeShare ? (odd.NextInt(2) == 0 ? 16 : 20) : 18;

    private void NoteValves(int[] ends)
    {
        for (var s = 0; s < ends.Length; s++)
        {
            if (chance.NextDouble() < 0.7)
            {
                note(new ValveFact { Id = $"v{s + 1}", Box = $"b{ends[s]}", Station = $"s{s + 1}" });
            }
        }
    }

    private void NoteSpares(int boxes)
    {
        string[] colours = ["red", "blue", "yellow", "green", "orange", "brown", "black"];
        for (var e = 0; e < shape.SpareEnds; e++)
        {
            note(new EndFact { Id = $"e{e + 1}", Place = $"b{odd.NextInt(boxes)}", Colour = colours[odd.NextInt(colours.Length)], Note = "use not known" });
        }
    }

    private static bool Passes(int[] parents, int end, int box)
    {
        for (var at = end; at >= 0; at = parents[at])
        {
            if (at == box)
            {
                return true;
            }
        }

        return false;
    }
}
