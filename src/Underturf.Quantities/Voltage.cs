namespace Underturf.Quantities;

/// <summary>A voltage, rms where it alternates.</summary>
public readonly record struct Voltage(double Volts) : IQuantity<Voltage>
{
    public static Dimension Dimension => Dimension.Voltage;

    public double Si => Volts;

    public static Voltage FromSi(double si) => new(si);
}
