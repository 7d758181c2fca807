using Underturf.Quantities;

namespace Underturf.Networks.Hydraulics.Emptying;

/// <summary>
/// Water in full pipes that runs to an opening by its weight once the supply is shut. Two bounds: what surely comes, because air can follow
/// it and no crest holds it back; and all that stands higher than the opening, as siphons and gulps of air may bring it.
/// </summary>
public sealed class StoredWater
{
    private readonly List<Band> sure = [];
    private readonly List<Band> possible = [];

    private StoredWater()
    {
    }

    public double LeastCubicMetres => sure.Sum(b => b.CubicMetres);

    public double MostCubicMetres => possible.Sum(b => b.CubicMetres);

    internal IReadOnlyList<Band> Sure => sure;

    internal IReadOnlyList<Band> Possible => possible;

    /// <param name="opening">The node that is open to the hole.</param>
    /// <param name="airEntries">Nodes where air comes in: outlets without a check valve, a bleed that is opened, a lifted bonnet.</param>
    /// <returns>The water, or the supply that would have to be shut first.</returns>
    public static Outcome<StoredWater> Above(PipeNetwork network, int opening, IReadOnlyList<int> airEntries)
    {
        var crests = Reach.Crests(network, opening);
        var supply = Enumerable.Range(0, crests.Length).FirstOrDefault(n => network.Nodes[n].IsReservoir && double.IsFinite(crests[n]), -1);
        if (supply >= 0)
        {
            return new Problem($"supply '{network.Nodes[supply].Name}'", "still runs to the opening", "Shut an isolation valve between them, and say so in the network");
        }

        var (stored, air) = (new StoredWater(), Reach.AirDownTo(network, airEntries));
        foreach (var element in network.Flowing.Where(e => e.LengthMetres > 0 && !e.IsClosed))
        {
            stored.Add(network, element, opening, crests, air);
        }

        return stored;
    }

    private void Add(PipeNetwork network, PipeElement pipe, int opening, double[] crests, double[] air)
    {
        var level = network.Nodes[opening].ElevationMetres;
        var (a, b) = (network.Nodes[pipe.A].ElevationMetres, network.Nodes[pipe.B].ElevationMetres);
        var (low, high) = (Math.Min(a, b), Math.Max(a, b));
        if (high - low < pipe.InsideDiameterMetres)
        {
            // A level pipe is as high as it is wide.
            (low, high) = (((a + b) - pipe.InsideDiameterMetres) / 2, ((a + b) + pipe.InsideDiameterMetres) / 2);
        }

        var crest = pipe.IsOneWay ? crests[pipe.B] : Math.Min(crests[pipe.A], crests[pipe.B]);
        if (double.IsInfinity(crest))
        {
            return;
        }

        var area = HoleDischarge.AreaSquareMetres(pipe.InsideDiameterMetres) * pipe.LengthMetres / (high - low);
        var breathed = Math.Max(air[pipe.A], air[pipe.B]) >= Math.Max(a, b) ? high : Math.Max(air[pipe.A], air[pipe.B]);
        Put(possible, Math.Max(low, level) - level, high - level, area);
        Put(sure, Math.Max(low, crest <= Math.Min(a, b) ? level : Math.Max(level, crest)) - level, Math.Min(high, breathed) - level, area);
    }

    private static void Put(List<Band> bands, double from, double to, double area)
    {
        if (to > from)
        {
            bands.Add(new Band(from, to, area));
        }
    }
}

/// <summary>Water between two heights over the opening, so much for each metre.</summary>
internal readonly record struct Band(double From, double To, double Area)
{
    internal double CubicMetres => Area * (To - From);
}
