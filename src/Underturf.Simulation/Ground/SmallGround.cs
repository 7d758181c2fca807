using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Quantities;

namespace Underturf.Simulation;

/// <summary>
/// The ground of a small made-up property: boxes joined in any order by a tree of cables, stations at the ends, and what a first walk
/// notes of them. The truth is drawn about these notes.
/// </summary>
internal sealed class SmallGround(SeededGenerator chance, Action<Fact> note)
{
    public void Lay()
    {
        note(new PropertyFact { Name = "A made-up property", Zone = "Etc/GMT+6" });
        note(new ControllerFact { Id = "c", Terminals = 48, Position = new Position(0, 0) });
        var boxes = 4 + chance.NextInt(8);
        var parents = Scattered(boxes);
        var stations = 6 + chance.NextInt(15);
        var ends = Enumerable.Range(0, stations).Select(_ => chance.NextInt(boxes)).ToArray();
        for (var s = 0; s < stations; s++)
        {
            note(new StationFact { Id = $"s{s + 1}", Controller = "c", Terminal = s + 1, Waters = [WorldGenerator.Place($"s{s + 1}")] });
        }

        LayCables(parents, ends);
        NoteValves(ends);
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
                    Length = taped ? new Length(Math.Max(1, Math.Round(20 + (chance.NextDouble() * 120)))) : null,
                    Gauge = WireSize.FromAwg(18),
                    CommonGauge = WireSize.FromAwg(14),
                    Sure = taped ? Grade.Measured : Grade.Estimated,
                });
            }
        }
    }

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
