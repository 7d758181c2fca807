namespace Underturf.Quantities;

/// <summary>What a quantity is a quantity of. Each has one SI unit inside the program (see <see cref="Units"/>).</summary>
public enum Dimension
{
    Length,
    Resistance,
    Voltage,
    Current,
    ApparentPower,
    Frequency,
    Flow,
    Pressure,
    Time,
    Temperature,
    Area,
    Capacitance,
    Volume,
}
