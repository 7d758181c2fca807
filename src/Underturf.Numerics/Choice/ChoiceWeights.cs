namespace Underturf.Numerics;

/// <summary>
/// Weights of a conditional logit: an alternative with features f is chosen with a probability in proportion to exp(w f), or, in a small
/// share of cases, without regard to them. Each weight has a normal prior; the posterior is taken as normal about its mode.
/// </summary>
/// <remarks>
/// Model: McFadden, "Conditional logit analysis of qualitative choice behavior", in Zarembka (ed.), Frontiers in Econometrics, 1974; ridge
/// prior and Laplace approximation as in any text on Bayesian regression. The mode is found by Newton steps within rounds of expectation
/// and maximisation over which choices paid no regard.
/// </remarks>
public sealed class ChoiceWeights
{
    private const int Rounds = 3, NewtonSteps = 4;

    /// <summary>Steps smaller than this share of a spread change nothing.</summary>
    private const double Settled = 1e-3;

    private readonly double[] prior;
    private readonly double precision;
    private readonly double regardless;
    private readonly double[] weights;
    private readonly double[] information;

    private ChoiceWeights(double[] prior, double spread, double regardless)
    {
        (this.prior, precision, this.regardless) = (prior, 1 / (spread * spread), regardless);
        weights = [.. prior];
        information = new double[prior.Length * prior.Length];
    }

    public IReadOnlyList<double> Mean => weights;

    /// <summary>Standard deviation of each weight.</summary>
    public IReadOnlyList<double> Spread { get; private set; } = [];

    private CholeskyFactor Factor { get; set; } = null!;

    /// <param name="prior">Mean of each weight beforehand.</param>
    /// <param name="spread">Standard deviation of each beforehand.</param>
    /// <param name="regardless">Share of choices that pay no regard to the features, between 0 and 1.</param>
    public static ChoiceWeights Learn(IReadOnlyList<Choice> choices, double[] prior, double spread, double regardless)
    {
        var learned = new ChoiceWeights(prior, spread, regardless);
        for (var round = 0; round < (choices.Count == 0 ? 0 : Rounds); round++)
        {
            var regards = choices.Select(learned.Regard).ToArray();
            for (var step = 0; step < NewtonSteps && learned.Step(choices, regards) > Settled * spread; step++)
            {
            }
        }

        learned.Inform(choices, [.. choices.Select(learned.Regard)]);
        return learned;
    }

    /// <summary>Weights drawn from the posterior.</summary>
    public double[] Draw(SeededGenerator chance)
    {
        var draw = new double[weights.Length];
        for (var k = 0; k < draw.Length; k++)
        {
            draw[k] = chance.NextNormal();
        }

        Factor.SolveTransposed(draw);
        for (var k = 0; k < draw.Length; k++)
        {
            draw[k] += weights[k];
        }

        return draw;
    }

    /// <summary>Probability that a choice paid regard to the features.</summary>
    private double Regard(Choice choice)
    {
        var shares = Shares(choice, out var logSum);
        var density = Math.Exp(Dot(choice.Chosen) - logSum) * shares.Length;
        return (1 - regardless) * density / (((1 - regardless) * density) + regardless);
    }

    private double Step(IReadOnlyList<Choice> choices, double[] regards)
    {
        var gradient = Inform(choices, regards);
        Factor.Solve(gradient);
        var largest = 0.0;
        for (var k = 0; k < weights.Length; k++)
        {
            weights[k] += gradient[k];
            largest = Math.Max(largest, Math.Abs(gradient[k]));
        }

        return largest;
    }

    /// <summary>Gradient of the log posterior; sets the information, which is its negative curvature, and what follows from it.</summary>
    private double[] Inform(IReadOnlyList<Choice> choices, double[] regards)
    {
        var size = weights.Length;
        var gradient = new double[size];
        Array.Clear(information);
        for (var k = 0; k < size; k++)
        {
            gradient[k] = precision * (prior[k] - weights[k]);
            information[(k * size) + k] = precision;
        }

        foreach (var (i, choice) in choices.Index())
        {
            Add(choice, regards[i], gradient);
        }

        Factor = CholeskyFactor.Of(information, size);
        Spread = [.. Factor.InverseDiagonal().Select(Math.Sqrt)];
        return gradient;
    }

    private void Add(Choice choice, double regard, double[] gradient)
    {
        var (size, shares) = (weights.Length, Shares(choice, out _));
        var means = new double[size];
        var weighted = new double[shares.Length];
        int[] telling = [.. Enumerable.Range(0, size).Where(k => choice.Tells(k))];
        foreach (var k in telling)
        {
            var layer = choice.Alternatives[k];
            var mean = 0.0;
            for (var a = 0; a < shares.Length; a++)
            {
                mean += weighted[a] = shares[a] * layer[a];
            }

            means[k] = mean;
            gradient[k] += regard * (choice.Chosen[k] - mean);
            foreach (var l in telling.TakeWhile(l => l <= k))
            {
                var product = RowMath.Dot(weighted, choice.Alternatives[l]);
                information[(k * size) + l] += regard * (product - (mean * means[l]));
            }
        }
    }

    private double[] Shares(Choice choice, out double logSum)
    {
        var shares = new double[choice.Alternatives[0].Length];
        for (var k = 0; k < weights.Length; k++)
        {
            if (choice.Tells(k))
            {
                RowMath.AddTimes(shares, weights[k], choice.Alternatives[k]);
            }
        }

        var (most, sum) = (shares.Max(), 0.0);
        for (var a = 0; a < shares.Length; a++)
        {
            sum += shares[a] = Math.Exp(shares[a] - most);
        }

        for (var a = 0; a < shares.Length; a++)
        {
            shares[a] /= sum;
        }

        logSum = most + Math.Log(sum);
        return shares;
    }

    private double Dot(double[] features)
    {
        var sum = 0.0;
        for (var k = 0; k < features.Length; k++)
        {
            sum += weights[k] * features[k];
        }

        return sum;
    }
}
