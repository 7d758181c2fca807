namespace Underturf.Networks.Hydraulics.Emptying;

/// <summary>What lets water out: a port, a hole or a pump, as well as it is known.</summary>
public readonly record struct Opening
{
    private readonly double least;
    private readonly double most;
    private readonly bool isPump;

    private Opening(double least, double most, bool isPump) => (this.least, this.most, this.isPump) = (least, most, isPump);

    /// <summary>A port or a hole, by its weight: Q = Cd a sqrt(2 g z), z over the opening.</summary>
    /// <param name="leastDischargeFactor">Cd at its worst, above 0: a bleed port's screw or a broken edge in the way.</param>
    /// <param name="mostDischargeFactor">Cd at its best, at most 1.</param>
    public static Opening Hole(double diameterMetres, double leastDischargeFactor, double mostDischargeFactor)
    {
        var area = HoleDischarge.AreaSquareMetres(diameterMetres);
        return new Opening(area * leastDischargeFactor, area * mostDischargeFactor, isPump: false);
    }

    /// <summary>A pump that takes what comes.</summary>
    public static Opening Pump(double leastCubicMetresPerSecond, double mostCubicMetresPerSecond) => new(leastCubicMetresPerSecond, mostCubicMetresPerSecond, isPump: true);

    /// <summary>How much comes, and how long until it no longer runs.</summary>
    public EmptyingEstimate Empty(StoredWater water) =>
        new(water.LeastCubicMetres, water.MostCubicMetres, Seconds(water.Sure, most), Seconds(water.Possible, least));

    /// <summary>
    /// Quasi-steady: the surface sinks slowly enough that the flow is that of its height. For a band of area A between z1 and z2 the time is
    /// A (sqrt z2 - sqrt z1) sqrt(2 / g) / (Cd a) (exact; bands add up, as all share one surface).
    /// </summary>
    private double Seconds(IEnumerable<Band> bands, double discharge)
    {
        var sum = 0.0;
        foreach (var band in bands)
        {
            sum += isPump
                ? band.CubicMetres / discharge
                : band.Area * (Math.Sqrt(band.To) - Math.Sqrt(band.From)) * Math.Sqrt(2 / Water.GravityMetresPerSecondSquared) / discharge;
        }

        return sum;
    }
}

/// <summary>Volume and time as ranges.</summary>
public readonly record struct EmptyingEstimate(double LeastCubicMetres, double MostCubicMetres, double LeastSeconds, double MostSeconds);
