namespace Underturf.Networks.Hydraulics;

/// <summary>
/// Head lost by flow, as a maker of meters or backflow devices draws it: straight between its points, beyond the last one along the last
/// stretch. What the curve starts with at no flow is a spring that has to be overcome.
/// </summary>
/// <param name="FlowsCubicMetresPerSecond">From 0 upward, each more than the one before.</param>
/// <param name="LossesMetres">Of each flow; never falling, the last more than the one before.</param>
public sealed record LossCurve(IReadOnlyList<double> FlowsCubicMetresPerSecond, IReadOnlyList<double> LossesMetres)
{
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
