using Underturf.Networks.Wiring.Instruments;
using Underturf.Quantities;

namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>Capacitance a metre along a run, one shared factor being unknown.</summary>
internal static class CapacitanceProfile
{
    internal static Outcome<Uncertain[]> PerMetre(Run run, Unknowns unknowns, bool allowUnknown, string method)
    {
        var factor = unknowns.Add("capacitance a metre", 1, run.CapacitanceSpreadShare);
        var missing = run.Stretches.FirstOrDefault(s => s.FaradsPerMetre == 0);
        if (missing is null)
        {
            return run.Stretches.Select(s => factor * s.FaradsPerMetre).ToArray();
        }

        return allowUnknown && run.Stretches.All(s => s.FaradsPerMetre == 0)
            ? run.Stretches.Select(_ => factor).ToArray()
            : new Problem(
                $"{method}, stretch '{missing.Name}'",
                "has no capacitance a metre",
                "Read a sound conductor of the same bundle over a known length and divide");
    }

    internal static Problem? CheckStray(MeasuredFarads stray, string method, params ReadOnlySpan<MeasuredFarads> readings)
    {
        foreach (var reading in readings)
        {
            if (reading.Farads <= stray.Farads)
            {
                return new Problem(
                    method,
                    "a reading is no more than the stray capacitance of meter and leads",
                    "The break is at the clip, or the clip made no contact: clean the conductor and read again");
            }
        }

        return stray.Check($"{method}, stray capacitance", mayBeZero: true);
    }
}
