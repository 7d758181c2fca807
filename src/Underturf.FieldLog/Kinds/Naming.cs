using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Conductor ends at a place were touched, while something was put on wires elsewhere: what tells which wire is which.</summary>
public sealed record TouchFact : Fact
{
    /// <summary>The way it was done: a name in the practice book, for example "live wire" or "known resistor".</summary>
    public required string How { get; init; }

    /// <summary>The place where the ends are.</summary>
    public required string Place { get; init; }

    /// <summary>What it was put on, or what was measured at the far side: stations, or conductor ends seen at another place; or ends of this place, while wires were touched at the controller.</summary>
    public IReadOnlyList<string> Put { get; init; } = [];

    /// <summary>The end that the other lead was on, taken for the common.</summary>
    public string? Against { get; init; }

    /// <summary>The ends that were touched; the wires at the controller, by station or end, where it was put on at this place.</summary>
    public IReadOnlyList<string> Touched { get; init; } = [];

    /// <summary>Those of them that answered; the loudest alone where loudness was compared.</summary>
    public IReadOnlyList<string> Answered { get; init; } = [];

    /// <summary>What an ohmmeter showed, where one was used.</summary>
    public Shown? Value { get; init; }
}

/// <summary>A resistor of known ohms was put between a conductor end and the common, or taken off.</summary>
public sealed record ResistorFact : Fact
{
    /// <summary>The end; a station where it is on its wire at the controller.</summary>
    public required string End { get; init; }

    /// <summary>Its ohms; nothing where it was taken off.</summary>
    public Resistance? Ohms { get; init; }
}
