using Underturf.Property.Practice;

namespace Underturf.Planning.Day.Interim;

/// <summary>One thing that may go wrong, as numbers: how likely it is so, and what it does then.</summary>
/// <param name="Dry">Chance, where it is so, that the station waters nothing.</param>
/// <param name="Place">Id of the place that was left so; nothing where it is something else.</param>
/// <param name="Off">Its water or its power is off for certain.</param>
internal sealed record RunRisk(string Say, double Chance, HarmPractice Harm, double Dry, bool Off = false, double Lost = 0, string? Told = null, string? Place = null)
{
    public double Unattended => Chance * ((Harm.Unattended * Harm.Minutes) + Lost);

    /// <summary>With somebody there who turns it off.</summary>
    public double Attended => Chance * Harm.Attended * Harm.Minutes;

    public double Waters => 1 - (Chance * Dry);
}
