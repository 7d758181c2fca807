namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>What an ohmmeter, or a meter's diode range, puts on its leads, the red one positive.</summary>
public readonly record struct TestDrive
{
    private TestDrive(double openVolts, double sourceOhms, double testAmperes, double mostOhms)
    {
        OpenVolts = openVolts;
        SourceOhms = sourceOhms;
        TestAmperes = testAmperes;
        MostOhms = mostOhms;
    }

    /// <summary>Volts on open leads.</summary>
    public double OpenVolts { get; }

    /// <summary>Ohms inside the meter; zero for a current source.</summary>
    public double SourceOhms { get; }

    /// <summary>Amperes of a current source; zero for one with ohms.</summary>
    public double TestAmperes { get; }

    /// <summary>Above it the range is left.</summary>
    public double MostOhms { get; }

    internal bool IsUsable => OpenVolts is > 0 and < 1e6 && MostOhms is > 0 and < double.PositiveInfinity && (IsUsual(SourceOhms) || IsUsual(TestAmperes));

    /// <summary>A cell behind ohms: needle meters, and digital ones that compare with a known resistor.</summary>
    public static TestDrive ThroughOhms(double openVolts, double sourceOhms, double mostOhms) => new(openVolts, sourceOhms, 0, mostOhms);

    /// <summary>A current source that gives up at some volts: most digital meters, and every diode range.</summary>
    public static TestDrive ConstantCurrent(double testAmperes, double mostVolts) => new(mostVolts, 0, testAmperes, mostVolts / testAmperes);

    private static bool IsUsual(double value) => value is > 0 and < double.PositiveInfinity;
}

/// <summary>What a meter finds under its own test volts.</summary>
/// <param name="Volts">Between the leads, red over black: what the diode range shows.</param>
/// <param name="Amperes">Out of the red lead.</param>
/// <param name="IsOverRange">The display shows no number.</param>
/// <param name="KirchhoffResidualAmperes">Largest imbalance of currents at a node.</param>
public readonly record struct DriveReading(double Volts, double Amperes, bool IsOverRange, double KirchhoffResidualAmperes)
{
    /// <summary>What the ohms range shows; positive infinity where it is over range.</summary>
    public double Ohms => IsOverRange ? double.PositiveInfinity : Volts / Amperes;
}
