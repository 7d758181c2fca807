using Underturf.Numerics;
using Underturf.Reasoning.Moves.Planning;

namespace Underturf.Simulation.Decisions;

/// <summary>Draws what can be found out: readings that cut the run in two, looks, single parts, readings at the controller, and tests of no plan at all.</summary>
internal sealed class SuiteMoves(SeededGenerator chance, SuiteGround ground, SuiteFaults faults)
{
    private const int Ways = 6;

    /// <summary>Share of the outcomes that are not those of the truth; two in six are free of error.</summary>
    private static readonly double[] Errors = [0, 0, 0.01, 0.03, 0.1, 0.25];

    private const double Imagined = 0.01;

    public IReadOnlyList<DecisionMove> Draw(int count) => [.. Enumerable.Range(0, count).Select(_ => chance.NextInt(Ways) switch
    {
        0 or 1 => Section(1 + chance.NextInt(ground.Places - 1)),
        2 => Look(chance.NextInt(ground.Places)),
        3 => Part(chance.NextInt(ground.Places), (SuiteKind)chance.NextInt((int)SuiteKind.Sound)),
        4 => AtController(),
        _ => Any(),
    })];

    /// <summary>At an opened splice: the fault lies before it, there or beyond, or nothing is odd.</summary>
    private DecisionMove Section(int place) => new(place, Scaled(8), Table(3, f => f.Kind == SuiteKind.Sound ? 2 : ground.IsBefore(f.Place, place) ? 0 : 1));

    /// <summary>Some faults are seen where they are, most times; now and then one is imagined.</summary>
    private DecisionMove Look(int place)
    {
        var clear = 0.8 + (0.2 * chance.NextDouble());
        return new DecisionMove(place, Scaled(12), [.. faults.All.Select(f =>
        {
            var seen = f.Place == place ? clear * Seen(f.Kind) : Imagined;
            return f.Kind == SuiteKind.Corroded ? new[] { 1 - seen, 0, seen } : [1 - seen, seen, 0];
        })]);
    }

    private DecisionMove Part(int place, SuiteKind kind) => new(place, Scaled(6), Table(2, f => f == (kind, place) ? 1 : 0));

    /// <summary>Tells kinds apart, not places.</summary>
    private DecisionMove AtController()
    {
        var shows = Enumerable.Range(0, (int)SuiteKind.Other).Select(_ => chance.NextInt(3)).ToArray();
        return new DecisionMove(0, Scaled(2), Table(3, f => shows[(int)f.Kind]));
    }

    private DecisionMove Any()
    {
        var shows = faults.All.Distinct().ToDictionary(f => f, _ => chance.NextInt(3));
        return new DecisionMove(chance.NextInt(ground.Places), Scaled(5), Table(3, f => shows[f]));
    }

    private static double Seen(SuiteKind kind) => kind switch
    {
        SuiteKind.Parted or SuiteKind.Corroded => 0.85,
        SuiteKind.Broken or SuiteKind.Coil => 0.1,
        _ => Imagined,
    };

    private double Scaled(double minutes) => minutes * (0.5 + chance.NextDouble());

    private List<double[]> Table(int outcomes, Func<(SuiteKind Kind, int Place), int> shows)
    {
        var error = Errors[chance.NextInt(Errors.Length)];
        return [.. faults.All.Select(f => Enumerable.Range(0, outcomes)
            .Select(o => f.Kind == SuiteKind.Other ? 1.0 / outcomes : shows(f) == o ? 1 - error : error / (outcomes - 1))
            .ToArray())];
    }
}
