using CsCheck;
using Underturf.Reasoning.Location;

namespace Underturf.Tests.Reasoning.Location;

/// <summary>Against the sum over every place of every thing and every way in which each note came about.</summary>
public sealed class LocationBeliefTests
{
    private const int Cells = 6;

    [Fact]
    public void Shares_are_those_of_the_sum_over_all_places_of_all_things() => Cases().Sample(made =>
    {
        var belief = LocationBelief.Of(made.Priors, made.None, made.Clues);
        var exact = BruteForce(made.Priors, made.None, made.Clues);
        for (var t = 0; t < made.Priors.Count; t++)
        {
            Assert.Equal(exact[t][Cells], belief.None[t], 9);
            Assert.Equal(1, belief.Shares[t].Sum() + belief.None[t], 9);
            Assert.All(Enumerable.Range(0, Cells), c => Assert.Equal(exact[t][c], belief.Shares[t][c], 9));
        }
    }, iter: 300);

    [Fact]
    public void The_order_of_notes_makes_no_difference() => Cases().Sample(made =>
    {
        var (one, other) = (LocationBelief.Of(made.Priors, made.None, made.Clues), LocationBelief.Of(made.Priors, made.None, [.. made.Clues.Reverse()]));
        Assert.All(one.Shares.Zip(other.Shares), pair => Assert.All(pair.First.Zip(pair.Second), p => Assert.Equal(p.First, p.Second, 9)));
    }, iter: 100);

    /// <summary>Two notes, each made by one of the things, by none, or a difference of two ways, as of something heard.</summary>
    private static Gen<(IReadOnlyList<double[]> Priors, IReadOnlyList<double> None, IReadOnlyList<Clue> Clues)> Cases() => Gen.Int[1, 3].SelectMany(things =>
        Gen.Select(Gen.Double[0.01, 1].Array[Cells].Array[things], Gen.Double[0.01, 0.6].Array[things], Layers().Array[2], Gen.Double[0.05, 0.9]).Select((weights, none, layers, hit) =>
        {
            IReadOnlyList<double[]> priors = [.. weights.Select(w => w.Select(x => x / w.Sum()).ToArray())];
            var unheard = new Layer([.. layers[1].Cells.Select(v => 1 - (0.5 * v / 3))], 1);
            IReadOnlyList<Layer?> all = [.. priors.Select(_ => unheard)], nobody = [.. priors.Select(_ => (Layer?)null)];
            Clue[] clues =
            [
                Clue.MadeByOne("a/1", "near", [.. priors.Select(_ => true)], hit, layers[0], unheard),
                new Clue(["a/2"], "heard", [new ClueCase(1, nobody), new ClueCase(-0.9, all)]),
            ];
            return (priors, (IReadOnlyList<double>)none, (IReadOnlyList<Clue>)clues);
        }));

    private static Gen<Layer> Layers() => Gen.Double[0, 3].Array[Cells].Select(cells => new Layer(cells, 0));

    /// <summary>For each thing its share of each cell and, last, that there is none.</summary>
    private static double[][] BruteForce(IReadOnlyList<double[]> priors, IReadOnlyList<double> none, IReadOnlyList<Clue> clues)
    {
        var sums = priors.Select(_ => new double[Cells + 1]).ToArray();
        var places = new int[priors.Count];
        for (var code = 0; code < Math.Pow(Cells + 1, places.Length); code++)
        {
            var (left, weight) = (code, 1.0);
            for (var t = 0; t < places.Length; t++)
            {
                (places[t], left) = (left % (Cells + 1), left / (Cells + 1));
                weight *= places[t] == Cells ? none[t] : (1 - none[t]) * priors[t][places[t]];
            }

            weight *= clues.Aggregate(1.0, (product, clue) => product * clue.Cases.Sum(k => k.Weight * places.Select((p, t) => k.Layers[t] is { } layer ? p == Cells ? layer.None : layer.Cells[p] : 1).Aggregate(1.0, (a, b) => a * b)));
            for (var t = 0; t < places.Length; t++)
            {
                sums[t][places[t]] += weight;
            }
        }

        return [.. sums.Select(s => s.Select(x => x / sums[0].Sum()).ToArray())];
    }
}
