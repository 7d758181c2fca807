using System.Globalization;

namespace Underturf.Reasoning.Water;

/// <summary>What is lost in a day while something runs that should not: nine times in ten between these.</summary>
/// <param name="LeastMoney">In the owner's money, where a price was noted.</param>
public sealed record WaterLoss(double LeastCubicMetresADay, double MostCubicMetresADay, double? LeastMoney, double? MostMoney)
{
    /// <summary>"2,400 to 2,800 gal a day, 15 to 17 in money".</summary>
    public string Say(WaterSay say) => $"{say.Volume(LeastCubicMetresADay, MostCubicMetresADay)} a day"
        + (LeastMoney is { } least ? string.Create(CultureInfo.InvariantCulture, $", {least:0} to {MostMoney:0} in money a day") : string.Empty);
}
