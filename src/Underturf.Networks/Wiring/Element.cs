namespace Underturf.Networks.Wiring;

/// <summary>What an element of a wiring network is.</summary>
public enum ElementKind
{
    /// <summary>A splice, a fault, a meter: ohms only.</summary>
    Resistor,

    /// <summary>A length of wire.</summary>
    Conductor,

    /// <summary>The coil of a valve: ohms and henries in series.</summary>
    Coil,

    /// <summary>A transformer's output: an ideal source and ohms in series.</summary>
    Source,
}

/// <summary>One element as it stands in the network.</summary>
/// <param name="Name">For reports only.</param>
/// <param name="A">Node of its first end; positive current flows from A through the element to B.</param>
/// <param name="B">Node of its second end.</param>
/// <param name="Ohms">Zero is a perfect joint, positive infinity an open.</param>
/// <param name="Henries">Inductance of a coil, else zero.</param>
/// <param name="Volts">Rms volts of A over B with nothing connected; negative is the opposite phase. Zero for all but sources.</param>
public readonly record struct Element(string Name, ElementKind Kind, int A, int B, double Ohms, double Henries, double Volts);
