using Underturf.FieldLog;
using Underturf.Numerics;

namespace Underturf.Simulation;

/// <summary>Beds and lawns with the names of what stations water, for those that somebody has drawn: most lie beside their valve, some do not.</summary>
internal sealed class WateredGround(PropertyPlan plan, SeededGenerator chance, Action<Fact> note)
{
    private const double Drawn = 0.6, Astray = 0.15, BesideMetres = 4, AstrayMetres = 40;

    public void Write()
    {
        foreach (var station in plan.Stations.Where(_ => chance.Happens(Drawn)))
        {
            var valve = plan.Boxes[station.Box].At;
            var (wide, deep) = (chance.Between(6, 28), chance.Between(4, 22));
            var off = Math.Abs(chance.HeavyTailed()) * (chance.Happens(Astray) ? AstrayMetres : BesideMetres) / 2;
            var along = chance.NextDouble();
            var corner = chance.NextInt(4) switch
            {
                0 => new Position(valve.EastMetres + off, valve.NorthMetres - (along * deep)),
                1 => new Position(valve.EastMetres - off - wide, valve.NorthMetres - (along * deep)),
                2 => new Position(valve.EastMetres - (along * wide), valve.NorthMetres + off),
                _ => new Position(valve.EastMetres - (along * wide), valve.NorthMetres - off - deep),
            };
            var patch = new Patch(chance.Happens(0.7) ? "lawn" : "bed", Math.Round(corner.EastMetres, 1), Math.Round(corner.NorthMetres, 1), Math.Round(wide, 1), Math.Round(deep, 1));
            note(new GroundFact { Id = $"w{station.Id[1..]}", What = patch.What, Label = WorldGenerator.Place(station.Id), Shape = patch.Corners });
        }
    }
}
