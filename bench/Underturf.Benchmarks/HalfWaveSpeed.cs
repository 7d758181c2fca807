using System.Diagnostics;
using System.Globalization;
using Underturf.Networks.Wiring.HalfWave;
using Underturf.Numerics;
using Underturf.References.Tests;
using Underturf.References.Tests.RandomProperties;

namespace Underturf.Benchmarks;

/// <summary>
/// How long the steady state of a random property with half-wave devices takes, beside a transient of ngspice of the same in the same run.
/// Ours counts from the network as built, the peer's its start and the reading of its file.
/// </summary>
internal static class HalfWaveSpeed
{
    private const ulong FirstSeed = 7101;
    private const int Seeds = 5;
    private const int Repeats = 7;
    private static readonly (int Coils, int Devices)[] sizes = [(2, 1), (10, 1), (30, 3), (60, 6), (90, 8)];

    public static int Run(TextWriter output, IReadOnlyList<string> arguments)
    {
        Ours(FirstSeed, (10, 1), out _, out _);
        output.WriteLine("| coils | diodes | nodes | ours, ms | ngspice, ms | times less | compared | worst above the floor |");
        output.WriteLine("|---|---|---|---|---|---|---|---|");
        var agrees = true;
        foreach (var size in sizes)
        {
            var agreement = HalfWaveAgreement.OfProperty();
            output.WriteLine(Row(size, agreement));
            if (agreement.Disagreement is { } disagreement)
            {
                output.WriteLine($"Disagreement: {disagreement}");
                agrees = false;
            }
        }

        return agrees ? 0 : 1;
    }

    private static string Row((int Coils, int Devices) size, HalfWaveAgreement agreement)
    {
        var (ours, theirs, times) = (new double[Seeds], new double[Seeds], new double[Seeds]);
        var (coils, diodes, nodes) = (new double[Seeds], new double[Seeds], new double[Seeds]);
        for (var k = 0; k < Seeds; k++)
        {
            ours[k] = Ours(FirstSeed + (ulong)k, size, out var property, out var solution);
            var transient = new PropertyTransient(property.Circuit, property.Returns.First(), property.Hertz);
            var clock = Stopwatch.StartNew();
            var reference = transient.Run();
            theirs[k] = clock.Elapsed.TotalMilliseconds;
            times[k] = theirs[k] / ours[k];
            transient.Compare(solution, reference, agreement, $"{size.Coils} coils, seed {FirstSeed + (ulong)k}");
            (coils[k], diodes[k], nodes[k]) = (property.Coils.Count, property.Circuit.Diodes.Count, property.Network.NodeCount);
        }

        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {Spread(coils, "F0")} | {Spread(diodes, "F0")} | {Spread(nodes, "F0")} | {Spread(ours, "F1")} | {Spread(theirs, "F0")} | {Spread(times, "F0")} | {agreement.Count} | {agreement.WorstShare:P2} |");
    }

    /// <returns>Milliseconds, the median of some solves, each of a network made anew.</returns>
    private static double Ours(ulong seed, (int Coils, int Devices) size, out MixedProperty property, out PeriodicSolution solution)
    {
        var all = new double[Repeats];
        (property, solution) = (null!, null!);
        for (var k = 0; k < Repeats; k++)
        {
            property = new MixedProperty(new SeededGenerator(seed), size.Coils, size.Devices);
            var clock = Stopwatch.StartNew();
            solution = property.Circuit.SolvePeriodic(property.Hertz).Value;
            all[k] = clock.Elapsed.TotalMilliseconds;
        }

        return Timed.Median(all);
    }

    /// <summary>Median, least and most.</summary>
    private static string Spread(double[] values, string format) => string.Create(
        CultureInfo.InvariantCulture,
        $"{Timed.Median(values).ToString(format, CultureInfo.InvariantCulture)} ({values.Min().ToString(format, CultureInfo.InvariantCulture)}–{values.Max().ToString(format, CultureInfo.InvariantCulture)})");
}
