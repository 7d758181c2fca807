using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>The transformer as far as it is known.</summary>
/// <param name="Volts">Open-circuit volts.</param>
/// <param name="VoltsSpread">Standard deviation of them.</param>
/// <param name="Ohms">Inside it.</param>
/// <param name="RatedVoltAmperes">What it may deliver.</param>
internal readonly record struct Supply(double Volts, double VoltsSpread, double Hertz, double Ohms, double RatedVoltAmperes);

/// <summary>What stands in front of the instrument.</summary>
/// <param name="Paths">The station measured; a second one for a reading between two stations or a pair of suspects.</param>
/// <param name="Measures">How the instrument is connected.</param>
/// <param name="Place">Where one stands, for readings not taken at the controller.</param>
/// <param name="Supply">The transformer.</param>
/// <param name="Inrush">True to ask whether the valve pulls in, false for a valve that is held.</param>
/// <param name="JoinAt">The place where a pair may be joined.</param>
/// <param name="Swapped">True where the two stations have each other's terminal.</param>
internal sealed record BenchSetup(
    IReadOnlyList<StationPath> Paths,
    Measure Measures,
    string? Place,
    Supply Supply,
    bool Inrush = false,
    string? JoinAt = null,
    bool Swapped = false)
{
    public bool IsFed => Measures.IsFed();

    /// <summary>Which valve of the first path is meant: the one at the place, else the first.</summary>
    public int Valve
    {
        get
        {
            var valves = Paths[0].Valves;
            for (var i = 0; i < valves.Count; i++)
            {
                if (Place is not null && (valves[i].Place == Place || valves[i].Valve == Place))
                {
                    return i;
                }
            }

            return 0;
        }
    }
}
