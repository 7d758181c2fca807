using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Location;

/// <summary>The weights of the marks as this property teaches them: the practice book's, moved towards where things were found here.</summary>
internal sealed class LearnedMarks
{
    /// <summary>Cells that stand for all ground when weights are learned: shares come out to a few per cent.</summary>
    private const int Sampled = 2000;

    private const ulong Seed = 20260713;

    /// <summary>Draws over which what is not known of the weights is averaged.</summary>
    private const int Draws = 16;

    private readonly LocatingPractice book;

    private LearnedMarks(LocatingPractice book, ChoiceWeights weights) => (this.book, Weights) = (book, weights);

    public ChoiceWeights Weights { get; }

    /// <summary>Share of all ground that lies within the reach of each mark.</summary>
    public required double[] GroundNear { get; init; }

    /// <summary>Of what was found, how many lie within the reach of each mark.</summary>
    public required int[] FoundNear { get; init; }

    public static LearnedMarks Of(PracticeBook practice, PropertyHistory history, PropertyView view, GroundCells cells, MarkLayers layers, IReadOnlyList<FoundThing> found, LocationMemory memory)
    {
        var own = new OwnGroundFinder(history, view, practice);
        IReadOnlyList<IReadOnlyList<GroundShape>> watered = [.. found.Select(f => own.Watered(f.Station))];
        return memory.Keep(
            () => Learn(practice.Locating, cells, layers, found, watered),
            [practice, cells, PointRow.Of(found.Select(f => f.At)), string.Join('|', watered.Select(w => w.Count)), PointRow.Of(watered.SelectMany(w => w)), .. layers.All]);
    }

    private static LearnedMarks Learn(LocatingPractice book, GroundCells cells, MarkLayers layers, IReadOnlyList<FoundThing> found, IReadOnlyList<IReadOnlyList<GroundShape>> watered)
    {
        var sample = Sample(cells);
        var common = Alternatives(layers, book, sample, OwnGround.None);
        var choices = found.Select((f, i) => Choose(f, watered[i], layers, book, sample)).ToList();
        var within = Math.Exp(-1);
        return new LearnedMarks(book, ChoiceWeights.Learn(choices, [.. book.Marks.Select(m => m.Weight)], book.WeightSpread, book.Anywhere))
        {
            GroundNear = [.. common.Select(layer => layer.Count(v => v >= within) / (double)Math.Max(1, layer.Length))],
            FoundNear = [.. book.Marks.Select((_, m) => choices.Count(c => c.Chosen[m] >= within))],
        };
    }

    /// <summary>Chance of each cell before any sign, summing to one.</summary>
    public double[] Prior(double[][] layers, GroundCells cells)
    {
        var prior = new double[cells.Count];
        var logs = new double[cells.Count];
        var chance = new SeededGenerator(Seed);
        for (var draw = 0; draw < Draws; draw++)
        {
            Array.Clear(logs);
            foreach (var (k, weight) in Weights.Draw(chance).Index())
            {
                RowMath.AddTimes(logs, weight, layers[k]);
            }

            AddShares(prior, logs, cells);
        }

        for (var i = 0; i < prior.Length; i++)
        {
            prior[i] = ((1 - book.Anywhere) * prior[i] / Draws) + (book.Anywhere * cells.Area(i) / cells.AreaSquareMetres);
        }

        return prior;
    }

    private static void AddShares(double[] prior, double[] logs, GroundCells cells)
    {
        var (most, sum) = (logs.Max(), 0.0);
        for (var i = 0; i < logs.Length; i++)
        {
            sum += logs[i] = cells.Area(i) * Math.Exp(logs[i] - most);
        }

        RowMath.AddTimes(prior, 1 / sum, logs);
    }

    /// <summary>Cells strewn evenly over the ground, not in step with it.</summary>
    private static int[] Sample(GroundCells cells)
    {
        if (cells.Count <= Sampled)
        {
            return [.. Enumerable.Range(0, cells.Count)];
        }

        var (chance, stride) = (new SeededGenerator(Seed), (double)cells.Count / Sampled);
        return [.. Enumerable.Range(0, Sampled).Select(s => (int)((s + chance.NextDouble()) * stride))];
    }

    private static Choice Choose(FoundThing found, IReadOnlyList<GroundShape> watered, MarkLayers layers, LocatingPractice book, int[] sample)
    {
        var own = OwnGround.None with { Watered = watered };
        var chosen = layers.At(found.At, book.Things[0], own);
        return new Choice([.. chosen.Select((value, m) => book.Marks[m].IsLearned ? value : 0)], Alternatives(layers, book, sample, own));
    }

    /// <summary>Marks that are not learned have nothing to tell alternatives apart.</summary>
    private static double[][] Alternatives(MarkLayers layers, LocatingPractice book, int[] sample, OwnGround own) =>
        [.. layers.In(sample, book.Things[0], own).Select((layer, m) => book.Marks[m].IsLearned ? layer : new double[sample.Length])];
}
