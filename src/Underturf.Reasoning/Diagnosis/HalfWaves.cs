using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>What a meter makes of half waves.</summary>
internal static class HalfWaves
{
    /// <summary>
    /// The share of a sine's amount that it shows with the suspect's diodes before it; nothing where it shows a sine. How a valve pulls in on half waves is
    /// taken as on a sine.
    /// </summary>
    /// <param name="path">The station that is measured.</param>
    /// <param name="valve">Which of its valves is meant.</param>
    public static Spread? Shown(Suspect suspect, Measure measures, bool inrush, StationPath path, int valve)
    {
        if (inrush || suspect.Station != path.Station || suspect.Leg is not { } key || path.IndexOf(key) is not (var leg and >= 0))
        {
            return null;
        }

        return measures switch
        {
            Measure.StationAmps => suspect.Fault.HalfWaveAmps,
            Measure.CoilVolts when path.IsBehind(path.Valves[valve].Leg, leg) => suspect.Fault.HalfWaveVolts,
            _ => null,
        };
    }
}
