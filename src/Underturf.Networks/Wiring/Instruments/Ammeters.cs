namespace Underturf.Networks.Wiring.Instruments;

/// <summary>A meter put into the opened conductor.</summary>
/// <param name="BurdenOhms">Its shunt, fuse and leads: an element of the network in series.</param>
public sealed record InLineAmmeter(Display Display, double BurdenOhms)
{
    /// <returns>The number of the element, whose current reaches the digits.</returns>
    public int AddTo(WiringNetwork network, string name, int a, int b) => network.AddResistor(name, a, b, BurdenOhms);

    public Shown Show(double amperes, MeterError error = default) => Display.Show(amperes, error);

    public MeasuredAmperes Read(Shown shown) => new(shown.Si, Display.SpreadSi(shown));
}

/// <summary>A clamp around the conductor. Several turns through the jaw lift a small current out of the last digit.</summary>
/// <param name="Turns">Passes of the conductor through the jaw.</param>
public sealed record ClampMeter(Display Display, int Turns = 1)
{
    /// <summary>Rms current; what the jaw's zero adds is the error's offset, which the turns do not multiply.</summary>
    public Shown Show(double amperes, MeterError error = default) => Display.Show(Turns * amperes, error);

    /// <summary>Of the conductor: figure and spread shared out over the turns.</summary>
    public MeasuredAmperes Read(Shown shown) => new(shown.Si / Turns, Display.SpreadSi(shown) / Turns);

    /// <summary>ln of the chance of a display for an exact current.</summary>
    public double LogProbability(Shown shown, double amperes, double spreadAmperes = 0) =>
        Display.LogProbability(shown, Turns * amperes, Turns * spreadAmperes);
}
