namespace Underturf.Numerics;

/// <summary>
/// The chance to have found as a function of the minutes spent, when they are spent as well as can be. In pieces: between two of them the same cells are searched and
/// the rate of finding falls exponentially, r(t) = r0 exp(-(t - t0) / w).
/// </summary>
public sealed class SearchCurve
{
    private readonly double[] starts;
    private readonly double[] spans;
    private readonly double[] rates;
    private readonly double[] found;
    private readonly double[] areas;

    /// <param name="rates">Rates of finding at which cells join, chance a minute, falling.</param>
    /// <param name="spans">For each of them what it adds to w: minutes in which its own chance of being missed falls by e.</param>
    internal SearchCurve(ReadOnlySpan<double> rates, ReadOnlySpan<double> spans)
    {
        var pieces = Pieces(rates);
        (starts, this.spans, this.rates, found, areas) = (new double[pieces], new double[pieces], new double[pieces], new double[pieces], new double[pieces]);
        for (int cell = 0, piece = -1; cell < rates.Length; cell++)
        {
            if (cell == 0 || rates[cell] < rates[cell - 1])
            {
                Begin(++piece, rates[cell]);
            }

            this.spans[piece] += spans[cell];
        }

        Weight = pieces == 0 ? 0 : found[^1] + (this.spans[^1] * this.rates[^1]);
        MeanMinutes = pieces == 0 ? 0 : ((Weight * starts[^1]) - areas[^1] + (this.spans[^1] * this.spans[^1] * this.rates[^1])) / Weight;
    }

    /// <summary>Several searches shared out as one.</summary>
    public static SearchCurve Together(IReadOnlyList<SearchCurve> curves)
    {
        var (falling, spans) = (new List<double>(), new List<double>());
        foreach (var curve in curves)
        {
            for (var piece = 0; piece < curve.rates.Length; piece++)
            {
                falling.Add(-curve.rates[piece]);
                spans.Add(curve.spans[piece] - (piece == 0 ? 0 : curve.spans[piece - 1]));
            }
        }

        var (sorted, sortedSpans) = (falling.ToArray(), spans.ToArray());
        Array.Sort(sorted, sortedSpans);
        return new SearchCurve([.. sorted.Select(rate => -rate)], sortedSpans);
    }

    /// <summary>What is found in the end, with minutes without end: the chance that it is here at all.</summary>
    public double Weight { get; }

    /// <summary>Mean minutes until found, if it is here.</summary>
    public double MeanMinutes { get; }

    /// <summary>Chance to have found it within so many minutes.</summary>
    public double Found(double minutes) => starts.Length == 0 ? 0 : FoundIn(PieceAt(minutes), minutes);

    /// <summary>Chance a minute to find it next, not given that it is still missing.</summary>
    public double RatePerMinute(double minutes) => starts.Length == 0 ? 0 : RateIn(PieceAt(minutes), minutes);

    /// <summary>The chance found added up over the minutes from the first on: minutes that finding spares to somebody who would go on until then.</summary>
    public double SparedMinutes(double minutes) => starts.Length == 0 ? 0 : AreaIn(PieceAt(minutes), minutes);

    /// <summary>The minutes after which the rate of finding has fallen to this; none where it is never above.</summary>
    public double MinutesUntilRate(double ratePerMinute)
    {
        if (starts.Length == 0 || !(rates[0] > ratePerMinute))
        {
            return 0;
        }

        var (low, high) = (0, starts.Length);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = rates[middle] > ratePerMinute ? (middle, high) : (low, middle);
        }

        return starts[low] + (spans[low] * Math.Log(rates[low] / ratePerMinute));
    }

    /// <summary>
    /// When to stop, if finding it spares <paramref name="worthMinutes"/> minutes: the first moment at which a minute costs everybody who still searches more than it
    /// spares those who find it in that minute, r(t) worth = missing(t).
    /// </summary>
    /// <param name="missing">Chance that it is not found yet at <paramref name="fromMinutes"/>, elsewhere counted in.</param>
    /// <param name="fromMinutes">Minutes spent already.</param>
    /// <returns>Minutes from the very first on, not below those spent already.</returns>
    /// <remarks>
    /// The excess missing(t) - r(t) worth rises while worth is above w and falls afterwards to a limit that is not below zero, so it crosses zero once at most.
    /// </remarks>
    public double StopMinutes(double worthMinutes, double missing = 1, double fromMinutes = 0)
    {
        if (starts.Length == 0)
        {
            return fromMinutes;
        }

        var piece = PieceAt(fromMinutes);
        var all = missing + FoundIn(piece, fromMinutes);
        if (!(all - FoundIn(piece, fromMinutes) < RateIn(piece, fromMinutes) * worthMinutes))
        {
            return fromMinutes;
        }

        var (low, high) = (piece, starts.Length);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = all - found[middle] < rates[middle] * worthMinutes ? (middle, high) : (low, middle);
        }

        var fallen = (all - found[low] - (spans[low] * rates[low])) / (rates[low] * (worthMinutes - spans[low]));
        return Math.Max(fromMinutes, starts[low] - (spans[low] * Math.Log(Math.Clamp(fallen, double.Epsilon, 1))));
    }

    /// <summary>The least expected loss: minutes of searching until it is found or given up where that pays, and the worth of what is not found.</summary>
    public double LossMinutes(double worthMinutes)
    {
        var stop = StopMinutes(worthMinutes);
        return stop - SparedMinutes(stop) + (worthMinutes * (1 - Found(stop)));
    }

    /// <summary>How far the rate of finding has fallen since the piece began, as a logarithm, and its rate then: what an allocation is made from.</summary>
    internal (double RatePerMinute, double LogFallen) At(double minutes)
    {
        var piece = PieceAt(minutes);
        return (rates[piece], (minutes - starts[piece]) / spans[piece]);
    }

    private static int Pieces(ReadOnlySpan<double> rates)
    {
        var pieces = rates.Length == 0 ? 0 : 1;
        for (var cell = 1; cell < rates.Length; cell++)
        {
            pieces += rates[cell] < rates[cell - 1] ? 1 : 0;
        }

        return pieces;
    }

    /// <summary>All terms are positive, so nothing cancels however many cells there are.</summary>
    private void Begin(int piece, double rate)
    {
        rates[piece] = rate;
        if (piece > 0)
        {
            var before = piece - 1;
            spans[piece] = spans[before];
            starts[piece] = starts[before] + (spans[before] * Math.Log(rates[before] / rate));
            found[piece] = found[before] + (spans[before] * (rates[before] - rate));
            areas[piece] = AreaIn(before, starts[piece]);
        }
    }

    /// <summary>The last piece that has begun.</summary>
    private int PieceAt(double minutes)
    {
        var (low, high) = (0, starts.Length);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = starts[middle] <= minutes ? (middle, high) : (low, middle);
        }

        return low;
    }

    private double FoundIn(int piece, double minutes) => found[piece] + (spans[piece] * rates[piece] * Gone(piece, minutes));

    private double RateIn(int piece, double minutes) => rates[piece] * Math.Exp(-(minutes - starts[piece]) / spans[piece]);

    private double AreaIn(int piece, double minutes)
    {
        var spent = minutes - starts[piece];
        return areas[piece] + (found[piece] * spent) + (spans[piece] * rates[piece] * (spent - (spans[piece] * Gone(piece, minutes))));
    }

    /// <summary>1 - exp(-(t - t0) / w).</summary>
    private double Gone(int piece, double minutes) => -LogMath.ExpMinusOne(-(minutes - starts[piece]) / spans[piece]);
}
