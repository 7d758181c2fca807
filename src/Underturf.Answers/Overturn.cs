using System.Globalization;

namespace Underturf.Reasoning;

/// <summary>What would change the answer: one outcome of one move.</summary>
/// <param name="Action">The move.</param>
/// <param name="Where">Label of the place.</param>
/// <param name="Outcome">What it would have to show.</param>
/// <param name="Explanation">The explanation that would lead then.</param>
/// <param name="Overturns">True where that is another one than now; false where the leading one only loses.</param>
/// <param name="Before">Its probability now.</param>
/// <param name="After">Its probability then.</param>
/// <param name="Chance">How likely that outcome is.</param>
public sealed record Overturn(string Action, string Where, string Outcome, string Explanation, bool Overturns, double Before, double After, double Chance)
{
    /// <summary>"station ohms, station 5, at box 4: over range would make a broken conductor the likeliest, 8 to 71 %".</summary>
    public string Say
    {
        get
        {
            var change = string.Create(CultureInfo.InvariantCulture, $"{Diagnosis.Say.Share(Before)} now, {Diagnosis.Say.Share(After)} then");
            return Overturns
                ? $"{Action}, at {Where}: {Outcome} would make this the likeliest: {Explanation} ({change})"
                : $"{Action}, at {Where}: {Outcome} would shake it most ({change})";
        }
    }
}
