using Underturf.Numerics;

namespace Underturf.Simulation.Decisions;

/// <summary>The controller, at place 0, and boxes along runs that fork and turn; a few of them have to be found first.</summary>
internal sealed class SuiteGround
{
    private const int FewestPlaces = 3, MostPlaces = 6, OneInForks = 3, OneInHidden = 7;

    private const double ShortestMinutes = 0.3, LongestMinutes = 4, LeastSearchMinutes = 10, MostSearchMinutes = 40, Turn = 0.6, ForkTurn = 2;

    private readonly int[] parent;

    public SuiteGround(SeededGenerator chance)
    {
        Places = FewestPlaces + chance.NextInt(MostPlaces - FewestPlaces + 1);
        parent = new int[Places];
        parent[0] = -1;
        var (east, north, heading, search) = (new double[Places], new double[Places], new double[Places], new double[Places]);
        var usual = ShortestMinutes + ((LongestMinutes - ShortestMinutes) * chance.NextDouble() * chance.NextDouble());
        for (var p = 1; p < Places; p++)
        {
            var forks = chance.NextInt(OneInForks) == 0;
            var from = parent[p] = forks ? chance.NextInt(p) : p - 1;
            heading[p] = heading[from] + (chance.NextNormal() * (forks ? ForkTurn : Turn));
            var minutes = usual * Math.Exp(chance.NextNormal() / 2);
            (east[p], north[p]) = (east[from] + (minutes * Math.Cos(heading[p])), north[from] + (minutes * Math.Sin(heading[p])));
            search[p] = chance.NextInt(OneInHidden) == 0 ? LeastSearchMinutes + ((MostSearchMinutes - LeastSearchMinutes) * chance.NextDouble()) : 0;
        }

        WalkMinutes = [.. Enumerable.Range(0, Places).Select(a => Enumerable.Range(0, Places)
            .Select(b => a == b ? 0 : search[b] + double.Hypot(east[a] - east[b], north[a] - north[b]))
            .ToArray())];
    }

    public int Places { get; }

    public IReadOnlyList<IReadOnlyList<double>> WalkMinutes { get; }

    /// <summary>Whether a wire to a place passes another before it gets there.</summary>
    public bool IsBefore(int place, int to)
    {
        for (var p = parent[to]; p >= 0; p = parent[p])
        {
            if (p == place)
            {
                return true;
            }
        }

        return false;
    }
}
