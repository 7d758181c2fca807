namespace Underturf.Numerics;

/// <summary>A place that distances from known points lead to.</summary>
/// <param name="Misfit">Sum of the squares of what each distance is off, in its standard deviations.</param>
/// <param name="Share">Chance of this place among those that fit.</param>
public sealed record RangeFix(double XMetres, double YMetres, PlaneSpread Spread, double Misfit, double Share)
{
    /// <summary>
    /// All places that fit at least as well as any near them, the likeliest first: two distances leave two, mirrored at the line through their points. Least squares by Levenberg's method from
    /// every pair's crossings; the spread is linearised (inverse of the information), but where two places run into one, their common posterior is added up on a grid.
    /// </summary>
    /// <param name="ranges">Two or more, from points that do not all coincide.</param>
    /// <param name="weight">What else speaks for a place: a factor to its likelihood, zero where it cannot be.</param>
    public static IReadOnlyList<RangeFix> Of(IReadOnlyList<RangeTo> ranges, Func<double, double, double>? weight = null)
    {
        if (ranges.Count < 2)
        {
            throw new ArgumentException("One distance leaves a ring.", nameof(ranges));
        }

        var weigh = weight ?? ((_, _) => 1);
        var places = RangePosterior.Joined(ranges, RangeDescent.Minima(ranges));
        var likelihoods = places.Select(place => Math.Sqrt(place.Spread.Determinant) * Math.Exp(-place.Misfit / 2)).ToArray();
        var weighed = places.Select((place, i) => likelihoods[i] * weigh(place.XMetres, place.YMetres)).ToArray();

        // Where all are ruled out, what rules them out is wrong: the distances alone count.
        var shares = weighed.Sum() > 0 ? weighed : likelihoods;
        var total = shares.Sum();
        return [.. places.Select((place, i) => place with { Share = total > 0 && double.IsFinite(total) ? shares[i] / total : 1.0 / places.Count }).OrderByDescending(place => place.Share)];
    }

    /// <summary>The spread that such distances would leave at a place.</summary>
    public static PlaneSpread SpreadAt(IReadOnlyList<RangeTo> ranges, double xMetres, double yMetres) => RangeDescent.Spread(ranges, xMetres, yMetres);
}
