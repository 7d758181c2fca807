using System.Diagnostics;
using System.Globalization;
using Underturf.Networks.Hydraulics;
using Underturf.References.Tests.Pipes;

namespace Underturf.Benchmarks;

/// <summary>How long a pipe network takes, from its numbers to its heads, beside the engine of npm epanet-js; and all stations of a property.</summary>
internal static class WaterSpeed
{
    private const double Tolerance = 0.001;
    private const double Fine = 1e-5;
    private const double MostFeet = 0.01;

    /// <summary>Processor time, which others on the machine hardly touch, may grow with this power of the size: n log n between 500 and 10,000 is 1.13.</summary>
    private const double MostGrowth = 1.3;
    private const double MostSecondsForStations = 2;

    private static readonly (int Rows, int Columns, int Repeats)[] Sizes = [(20, 25, 60), (25, 40, 60), (40, 50, 40), (50, 100, 20), (100, 100, 12)];

    public static int Run(TextWriter output, IReadOnlyList<string> arguments)
    {
        if (arguments is ["calibrate", ..])
        {
            return WaterCalibration.Run(output, arguments);
        }

        output.WriteLine("| junctions | pipes | rounds, ours | theirs | ours with assembly ms | of it processor, mean | theirs, made ready and solved ms | solved only ms | of made ready and solved | of solved only | heads differ by ft, tolerance 1e-5 |");
        output.WriteLine("|---|---|---|---|---|---|---|---|---|---|---|");
        WarmUp();
        var (fair, times) = (true, new List<(int Junctions, double Milliseconds)>());
        foreach (var (rows, columns, repeats) in Sizes)
        {
            var row = Row.Of(rows, columns, repeats);
            output.WriteLine(row.ToString());
            times.Add((rows * columns, row.Processor));
            fair &= row.Ours <= row.Theirs / 2 && row.Feet <= MostFeet;
        }

        var growth = Math.Log(times[^1].Milliseconds / times[0].Milliseconds) / Math.Log(times[^1].Junctions / (double)times[0].Junctions);
        var seconds = Stations(output);
        output.WriteLine(Invariant($"Processor time grows with the {growth:F2} power of the size, at most {MostGrowth} is let pass."));
        return fair && growth <= MostGrowth && seconds <= MostSecondsForStations ? 0 : 1;
    }

    /// <summary>Until the runtime has compiled for good what a small network uses: the engine beside it comes compiled.</summary>
    private static void WarmUp()
    {
        var (clock, grid) = (Stopwatch.StartNew(), new GridPipes(10, 10, 3));
        while (clock.Elapsed.TotalSeconds < 3)
        {
            grid.Network().Solve(new SolveSettings(Tolerance, 100));
        }
    }

    private static double Stations(TextWriter output)
    {
        var clock = Stopwatch.StartNew();
        var pipes = new StationPipes(200, 15, 5);
        foreach (var valve in pipes.Valves)
        {
            var solved = pipes.Network.WithClosed(valve, isClosed: false).Solve();
            if (!solved.Succeeded || solved.Value.MassResidualCubicMetresPerSecond > 1e-8)
            {
                throw new InvalidOperationException($"Station {valve}: {solved.Problem}");
            }
        }

        var seconds = clock.Elapsed.TotalSeconds;
        output.WriteLine();
        output.WriteLine(Invariant($"200 stations, {pipes.Network.Nodes.Count} nodes, each alone with the whole network around it: {seconds:F2} s, at most {MostSecondsForStations} s is let pass."));
        return seconds;
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private sealed record Row(int Junctions, int Pipes, (int Ours, int Theirs) Rounds, double Ours, double Processor, double Theirs, double TheirSolving, double Feet)
    {
        internal static Row Of(int rows, int columns, int repeats)
        {
            var grid = new GridPipes(rows, columns, 3);
            var rounds = 0;
            _ = Enumerable.Range(0, repeats).Sum(_ => Time(grid, out rounds));
            var before = Environment.CpuUsage.TotalTime;
            var ours = Timed.Median([.. Enumerable.Range(0, 2 * repeats).Select(_ => Time(grid, out rounds))]);
            var processor = (Environment.CpuUsage.TotalTime - before).TotalMilliseconds / (2 * repeats);
            var network = grid.Network();
            var fine = network.Solve(new SolveSettings(Fine, 100)).Value;
            var input = new PeerInput(network, fine, PeerHelp.None);
            var timed = PipePeer.Solve([input.Write(Tolerance, GridPipes.Exponent)], 3 * repeats)[0];
            var theirs = PipePeer.Solve([input.Write(Fine, GridPipes.Exponent)])[0];
            var feet = Enumerable.Range(0, network.Nodes.Count).Max(n => Math.Abs(theirs.HeadMetres[n] - fine.HeadMetres(n)!.Value)) / PipePeer.MetresPerFoot;
            var warm = timed.Milliseconds.Skip(repeats).ToList();
            return new Row(rows * columns, network.Elements.Count, (rounds, timed.Rounds), ours, processor, Timed.Median([.. warm.Select(t => t.All)]), Timed.Median([.. warm.Select(t => t.Solving)]), feet);
        }

        public override string ToString() => Invariant(
            $"| {Junctions} | {Pipes} | {Rounds.Ours} | {Rounds.Theirs} | {Ours:F2} | {Processor:F2} | {Theirs:F1} | {TheirSolving:F1} | {Ours / Theirs:F3} | {Ours / TheirSolving:F2} | {Feet:E1} |");

        private static double Time(GridPipes grid, out int rounds)
        {
            var clock = Stopwatch.StartNew();
            rounds = grid.Network().Solve(new SolveSettings(Tolerance, 100)).Value.Rounds;
            return clock.Elapsed.TotalMilliseconds;
        }
    }
}
