using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Quantities;

namespace Underturf.Simulation;

/// <summary>What a technician notes of a property before reading anything: what is seen, told, taped and paced, and not what is buried.</summary>
internal sealed class FirstNotes(PropertyPlan plan, WorldShape shape, SeededGenerator chance, Action<Fact> note)
{
    private const double ValveFound = 0.7, SplicesNoted = 0.3;

    public void Write()
    {
        note(new PropertyFact { Name = "A made-up property", Zone = "Etc/GMT+6" });
        Controllers();
        foreach (var fact in plan.Terrain.Facts())
        {
            note(fact);
        }

        foreach (var station in plan.Stations)
        {
            note(new StationFact { Id = station.Id, Controller = ControllerOf(station), Terminal = station.Terminal, Waters = [WorldGenerator.Place(station.Id)] });
        }

        Boxes();
        new CableNotes(plan, chance.Fork("lengths"), note).Write();
        Valves();
        Ends();
    }

    private string ControllerOf(PlannedStation station) => PropertyPlan.ControllerId(plan.Boxes[station.Box].Controller);

    /// <summary>Controllers come with terminals by the dozen.</summary>
    private void Controllers()
    {
        for (var c = 0; c < plan.Terrain.Controllers.Count; c++)
        {
            var used = plan.Stations.Count(s => plan.Boxes[s.Box].Controller == c);
            note(new ControllerFact { Id = PropertyPlan.ControllerId(c), Terminals = 12 * ((used / 12) + 1), Position = plan.Terrain.Controllers[c] });
        }

        foreach (var phase in plan.Phases)
        {
            note(new ToldFact { Who = "the caretaker", Text = $"A part was built about {phase.Years:0} years ago, joined with {phase.Splices}" });
        }
    }

    /// <summary>Taped from a corner, to half a metre or so.</summary>
    private void Boxes()
    {
        foreach (var box in plan.Boxes.Where(b => !b.Buried))
        {
            note(new BoxFact { Id = box.Id, Position = plan.Terrain.Nearby(box.At, 0.4) });
            if (chance.Happens(SplicesNoted))
            {
                note(new SpliceFact { Id = $"j{box.Id[1..]}", Place = box.Id, Connector = plan.Phases[box.Phase].Splices });
            }
        }
    }

    private void Valves()
    {
        foreach (var station in plan.Stations.Where(s => !plan.Boxes[s.Box].Buried && chance.Happens(ValveFound)))
        {
            note(new ValveFact { Id = $"v{station.Id[1..]}", Box = plan.Boxes[station.Box].Id, Station = station.Id });
        }
    }

    /// <summary>The commons at the controllers, and spares that nobody knows the use of.</summary>
    private void Ends()
    {
        foreach (var (common, i) in plan.Stations.DistinctBy(plan.CommonOf).Select((s, i) => (s, i)))
        {
            note(new EndFact { Id = $"common-{i + 1}", Place = ControllerOf(common), Colour = "white", Gauge = WireSize.FromAwg(plan.Phases[common.Phase].CommonAwg), Common = true, Note = plan.CommonOf(common) });
        }

        var seen = plan.Boxes.Where(b => !b.Buried).ToList();
        for (var e = 0; e < shape.SpareEnds; e++)
        {
            var box = chance.Pick(seen);
            note(new EndFact { Id = $"e{e + 1}", Place = box.Id, Colour = chance.Pick(plan.Phases[box.Phase].Colours), Note = "use not known" });
        }
    }
}
