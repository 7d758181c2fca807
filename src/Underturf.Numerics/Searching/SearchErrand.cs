namespace Underturf.Numerics;

/// <summary>A search at several stops, with the way between them.</summary>
public sealed class SearchErrand
{
    private readonly SearchCurve[] stops;
    private readonly double[] startMinutes;
    private readonly double[] betweenMinutes;

    /// <param name="stops">What each stop finds in how many minutes; their weights add up to one at most, what is missing is elsewhere.</param>
    /// <param name="startMinutes">To each stop from where one stands.</param>
    /// <param name="betweenMinutes">From each stop (row) to each (column); no way round is shorter.</param>
    /// <param name="worthMinutes">What finding it is worth, in minutes of searching: who gives up pays it.</param>
    public SearchErrand(IReadOnlyList<SearchCurve> stops, ReadOnlySpan<double> startMinutes, ReadOnlySpan<double> betweenMinutes, double worthMinutes)
    {
        (this.stops, this.startMinutes, this.betweenMinutes, WorthMinutes) = ([.. stops], startMinutes.ToArray(), betweenMinutes.ToArray(), worthMinutes);
        if (startMinutes.Length != stops.Count || betweenMinutes.Length != stops.Count * stops.Count)
        {
            throw new ArgumentException("Each stop needs the minutes from the start and to each other stop.", nameof(betweenMinutes));
        }

        if (this.startMinutes.Concat(this.betweenMinutes).Append(worthMinutes).Any(minutes => !(minutes >= 0 && double.IsFinite(minutes))))
        {
            throw new ArgumentException("Minutes are finite and not negative.", nameof(worthMinutes));
        }

        const double Rounding = 1e-9;
        if (stops.Sum(stop => stop.Weight) > 1 + Rounding)
        {
            throw new ArgumentException("The chances of all stops add up to more than one.", nameof(stops));
        }
    }

    public int Count => stops.Length;

    public double WorthMinutes { get; }

    /// <summary>Stops in the plane, walked to in straight lines.</summary>
    /// <param name="setUpMinutes">To begin at a stop, whenever one comes there.</param>
    public static SearchErrand InPlane(
        IReadOnlyList<SearchStop> stops, double startXMetres, double startYMetres, double metresPerMinute, double worthMinutes, double setUpMinutes = 0)
    {
        var between = new double[stops.Count * stops.Count];
        for (var k = 0; k < between.Length; k++)
        {
            var (from, to) = (stops[k / stops.Count], stops[k % stops.Count]);
            between[k] = from == to ? 0 : setUpMinutes + (to.DistanceMetres(from.XMetres, from.YMetres) / metresPerMinute);
        }

        double[] start = [.. stops.Select(stop => setUpMinutes + (stop.DistanceMetres(startXMetres, startYMetres) / metresPerMinute))];
        return new SearchErrand([.. stops.Select(stop => stop.Plan.Curve)], start, between, worthMinutes);
    }

    public SearchCurve Stop(int stop) => stops[stop];

    /// <param name="from">A stop; below zero where one stands at first.</param>
    public double TravelMinutes(int from, int to) => from < 0 ? startMinutes[to] : from == to ? 0 : betweenMinutes[(from * stops.Length) + to];

    /// <summary>The least expected loss if no way took time: no walk is better. Minutes of searching, and the worth of what is not found.</summary>
    public double BoundMinutes() => SearchCurve.Together(stops).LossMinutes(WorthMinutes);
}
