namespace Underturf.Networks.Hydraulics;

/// <summary>
/// Head lost by flow, as a maker of meters or backflow devices draws it: straight between its points, beyond the last one along the last
/// stretch. What the curve starts with at no flow is a spring that has to be overcome.
/// </summary>
/// <param name="FlowsCubicMetresPerSecond">From 0 upward, each more than the one before.</param>
/// <param name="LossesMetres">Of each flow; never falling, the last more than the one before.</param>
public sealed record LossCurve(IReadOnlyList<double> FlowsCubicMetresPerSecond, IReadOnlyList<double> LossesMetres)
{
    /// <summary>
    /// One that grows with the square of the flow over a spring, through a known point; straight between points of it, so that up to the known flow it is too high
    /// by at most 1 % of what that loses.
    /// </summary>
    /// <param name="springMetres">Less than the loss.</param>
    public static LossCurve Through(double flowCubicMetresPerSecond, double lossMetres, double springMetres)
    {
        double[] shares = [0, .2, .4, .6, .8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3];
        return new LossCurve([.. shares.Select(s => s * flowCubicMetresPerSecond)], [.. shares.Select(s => springMetres + ((lossMetres - springMetres) * s * s))]);
    }

    /// <summary>The same with all its losses so many times as large.</summary>
    public LossCurve Times(double factor) => new(FlowsCubicMetresPerSecond, [.. LossesMetres.Select(l => l * factor)]);

    /// <summary>Loss at a flow; nothing where nothing runs, as then no spring is open.</summary>
    public double LossMetres(double flowCubicMetresPerSecond) => flowCubicMetresPerSecond > 0 ? At(flowCubicMetresPerSecond).Loss : 0;

    /// <summary>What is wrong with the points; null where nothing is.</summary>
    internal string? Fault()
    {
        var (flows, losses) = (FlowsCubicMetresPerSecond, LossesMetres);
        if (flows.Count < 2 || flows.Count != losses.Count)
        {
            return "needs at least two points, each a flow and its loss";
        }

        if (flows[0] != 0 || !(losses[0] >= 0))
        {
            return "does not start at no flow, with no negative loss";
        }

        for (var k = 1; k < flows.Count; k++)
        {
            if (!(flows[k] > flows[k - 1] && double.IsFinite(flows[k])) || !(losses[k] >= losses[k - 1] && double.IsFinite(losses[k])))
            {
                return $"falls at its point {k + 1}";
            }
        }

        return losses[^1] > losses[^2] ? null : "is level at its end";
    }

    /// <summary>Loss at a flow of zero or more, and its slope.</summary>
    internal (double Loss, double Slope) At(double flow)
    {
        var k = 1;
        while (k < FlowsCubicMetresPerSecond.Count - 1 && flow > FlowsCubicMetresPerSecond[k])
        {
            k++;
        }

        var slope = (LossesMetres[k] - LossesMetres[k - 1]) / (FlowsCubicMetresPerSecond[k] - FlowsCubicMetresPerSecond[k - 1]);
        return (LossesMetres[k - 1] + (slope * (flow - FlowsCubicMetresPerSecond[k - 1])), slope);
    }
}
