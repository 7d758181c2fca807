using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.HalfWave;

namespace Underturf.References.Tests;

/// <summary>
/// One ideal diode from a source into R and L in series, the closed form (exact). With phi = atan(w L / R), from the instant the source
/// rises, i = (Vm / Z) (sin(wt - phi) + sin(phi) exp(-wt / tan(phi))) until it is zero again at the extinction angle. The source has so many
/// volts that the diode's drop is nothing beside them. The project asks for 1 %.
/// </summary>
public sealed class HalfWaveClosedFormTests
{
    private const double Hertz = 60;
    private const double Volts = 24_000;
    private const double Ohms = 30;
    private const double Tolerance = 1e-3;

    [Theory]
    [InlineData(0.005)]
    [InlineData(0.03)]
    [InlineData(0.08)]
    [InlineData(0.15)]
    [InlineData(0.4)]
    [InlineData(1.5)]
    public void Average_and_rms_current_of_one_diode_into_a_coil_agree(double henries)
    {
        var current = Current(henries);
        var lag = Math.Atan(2 * Math.PI * Hertz * henries / Ohms);
        var extinction = Extinction(lag);
        var peak = Math.Sqrt(2) * Volts / Ohms;
        Near(peak * (1 - Math.Cos(extinction)) / (2 * Math.PI), current.Average());
        Near(peak * Math.Cos(lag) * RootMeanSquare(lag, extinction), current.Rms());
    }

    [Fact]
    public void Into_a_resistance_the_average_is_0_45_of_the_sources_rms_volts()
    {
        // Exact: sqrt(2) / pi = 0.4502; the practice notes give "about 0.45".
        var current = Current(0);
        Near(Math.Sqrt(2) / Math.PI * Volts / Ohms, current.Average());
        Near(Volts / Ohms / Math.Sqrt(2), current.Rms());
    }

    private static Waveform Current(double henries)
    {
        var wiring = new WiringNetwork();
        var (supply, common, coil) = (wiring.Node("supply"), wiring.Node("common"), wiring.Node("coil"));
        wiring.AddSource("transformer", supply, common, Volts, 0);
        var element = wiring.AddCoil("coil", coil, common, Ohms, henries);
        var circuit = new DiodeNetwork(wiring);
        circuit.AddDiode("diode", supply, coil, new Junction(1e-9, 1.8, 300), 1e-3);
        var solution = circuit.SolvePeriodic(Hertz).Value;
        Assert.InRange(solution.KirchhoffResidualAmperes, 0, 1e-6 * Volts / Ohms);
        return solution.Current(element).Value;
    }

    /// <summary>The angle above pi at which the closed form is zero, by bisection.</summary>
    private static double Extinction(double lag)
    {
        var (low, high) = (Math.PI, 2 * Math.PI);
        for (var round = 0; round < 60; round++)
        {
            var middle = (low + high) / 2;
            (low, high) = Shape(middle, lag) > 0 ? (middle, high) : (low, middle);
        }

        return low;
    }

    /// <summary>Root of the mean square over the whole period, by Simpson's rule.</summary>
    private static double RootMeanSquare(double lag, double extinction)
    {
        const int Pieces = 2000;
        var sum = 0.0;
        for (var k = 0; k <= Pieces; k++)
        {
            var weight = k is 0 or Pieces ? 1 : 2 + (2 * (k % 2));
            sum += weight * Math.Pow(Shape(extinction * k / Pieces, lag), 2);
        }

        return Math.Sqrt(sum * extinction / (3 * Pieces) / (2 * Math.PI));
    }

    private static double Shape(double angle, double lag) => Math.Sin(angle - lag) + (Math.Sin(lag) * Math.Exp(-angle / Math.Tan(lag)));

    private static void Near(double expected, double actual) => Assert.InRange(actual / expected, 1 - Tolerance, 1 + Tolerance);
}
