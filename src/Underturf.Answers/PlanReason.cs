using System.Globalization;

namespace Underturf.Reasoning.Identification;

/// <summary>Says why a plan is followed, and what the next best would cost.</summary>
internal static class PlanReason
{
    /// <param name="plans">Cheapest first, by expected loss.</param>
    public static string Of(IReadOnlyList<NamingPlan> plans) => plans switch
    {
        [] => string.Empty,
        [{ Loss: 0 }] => "it was asked for",
        [var only] => $"nothing else can be followed here with what is at hand; {Sum(only)}",
        [var best, var second, ..] => $"{Sum(best)}; next best {second.Way}: {Number(second.Loss - best.Loss)} min more{(second.OrMore ? " at least" : $", {Sum(second)}")}",
    };

    private static string Sum(NamingPlan plan) => $"{Number(plan.Minutes)} min of work and {Number(plan.Loss - plan.Minutes)} min that wrong and missing names would still cost";

    private static string Number(double minutes) => minutes.ToString("0", CultureInfo.InvariantCulture);
}
