using Underturf.Numerics;
using Underturf.Reasoning.Moves.Planning;

namespace Underturf.Simulation.Decisions;

/// <summary>What kind of thing is wrong.</summary>
internal enum SuiteKind
{
    /// <summary>Parted: seen when one looks; one repair with <see cref="Corroded"/>.</summary>
    Parted,
    Corroded,
    Broken,
    Coil,

    /// <summary>Nothing is wrong, and leaving alone is right.</summary>
    Sound,

    /// <summary>Nothing that can be done here cures it, and every reading may show anything.</summary>
    Other,
}

/// <summary>What may be wrong, how likely it is, and what mends it.</summary>
internal sealed class SuiteFaults
{
    private const int OneInSound = 3, OneInOther = 4, Seated = 4;

    /// <summary>Chances from equal to as unlike as two standard deviations of their logarithm make them.</summary>
    private const double SteepestPrior = 2;

    public SuiteFaults(SeededGenerator chance, SuiteGround ground, int count)
    {
        var seats = Seats(chance, ground.Places, count).ToArray();
        seats[0] = chance.NextInt(OneInSound) == 0 ? (SuiteKind.Sound, 0) : seats[0];
        seats[^1] = chance.NextInt(OneInOther) == 0 ? (SuiteKind.Other, seats[^1].Place) : seats[^1];
        All = seats;
        var steep = SteepestPrior * chance.NextDouble();
        var weights = All.Select(_ => Math.Exp(steep * chance.NextNormal())).ToArray();
        Chances = [.. weights.Select(w => w / weights.Sum())];
        Acts = [.. All.Where(f => f.Kind != SuiteKind.Other).Select(Repair).Distinct().Select(r => Act(r, Minutes(r.Kind) * (0.6 + (0.8 * chance.NextDouble()))))];
    }

    /// <summary>Each hypothesis: a kind, and the place where it sits.</summary>
    public IReadOnlyList<(SuiteKind Kind, int Place)> All { get; }

    public IReadOnlyList<double> Chances { get; }

    public IReadOnlyList<DecisionAct> Acts { get; }

    /// <summary>Kinds at places, none twice.</summary>
    private static IEnumerable<(SuiteKind Kind, int Place)> Seats(SeededGenerator chance, int places, int count)
    {
        var left = Enumerable.Range(0, Seated * places).ToList();
        for (var i = 0; i < count; i++)
        {
            var drawn = left[chance.NextInt(left.Count)];
            left.Remove(drawn);
            yield return ((SuiteKind)(drawn % Seated), drawn / Seated);
        }
    }

    private DecisionAct Act((SuiteKind Kind, int Place) repair, double minutes) =>
        new(repair.Kind == SuiteKind.Sound ? null : repair.Place, minutes, [.. All.Select(f => f.Kind != SuiteKind.Other && Repair(f) == repair)]);

    /// <summary>A splice is remade, parted or corroded; hypotheses with one repair at one place need not be told apart.</summary>
    private static (SuiteKind Kind, int Place) Repair((SuiteKind Kind, int Place) fault) => (fault.Kind == SuiteKind.Corroded ? SuiteKind.Parted : fault.Kind, fault.Place);

    private static double Minutes(SuiteKind kind) => kind switch
    {
        SuiteKind.Parted => 25,
        SuiteKind.Coil => 30,
        SuiteKind.Broken => 75,
        _ => 0,
    };
}
