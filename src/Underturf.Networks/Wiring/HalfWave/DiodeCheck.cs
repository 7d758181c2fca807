using Underturf.Quantities;

namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>What must hold before a network with diodes is solved, over and above the checks of its wiring.</summary>
internal static class DiodeCheck
{
    internal static Problem? BeforePeriodic(DiodeNetwork network, double hertz) => WiringCheck.BeforeAc(network.Wiring, hertz) ?? Junctions(network);

    internal static Problem? BeforeOhms(DiodeNetwork network, int red, int black, TestDrive drive) =>
        WiringCheck.BeforeOhms(network.Wiring, red, black) ?? Junctions(network) ?? Drive(drive);

    private static Problem? Junctions(DiodeNetwork network)
    {
        foreach (var diode in network.Diodes)
        {
            var place = $"diode '{network.Wiring.ElementAt(diode.Element).Name}'";
            if (!(diode.Junction.SaturationAmperes is >= 1e-20 and <= 1e-2))
            {
                return new Problem(place, $"{diode.Junction.SaturationAmperes} A is no saturation current", "Give 1e-20 to 0.01 A");
            }

            if (!(diode.Junction.EmissionFactor is >= 0.5 and <= 10))
            {
                return new Problem(place, $"{diode.Junction.EmissionFactor} is no emission coefficient", "Give a number between 1 and about 2");
            }

            if (!(diode.Junction.Kelvins is >= 200 and <= 500))
            {
                return new Problem(place, $"{diode.Junction.Kelvins} K is no junction's temperature", "Give kelvins, 200 to 500");
            }
        }

        return null;
    }

    private static Problem? Drive(TestDrive drive) => drive.IsUsable
        ? null
        : new Problem("ohmmeter", "its test volts, ohms or amperes are not above zero and finite", "Give those of the meter's range");
}
