namespace Underturf.Simulation;

/// <summary>Something that really is wrong in a made-up property.</summary>
/// <param name="Fault">Id of the fault in the practice book.</param>
/// <param name="Place">Where it sits.</param>
/// <param name="Amount">Its ohms, or its share of a coil's ohms.</param>
/// <param name="MoreCoils">Coils in parallel beyond those noted.</param>
/// <param name="Waters">Places that water besides the station's own.</param>
public sealed record TrueFault(
    string Fault,
    string? Station,
    string? Other,
    string? Place,
    double Amount,
    int MoreCoils,
    IReadOnlyList<string> Waters)
{
    /// <summary>What a half-wave device is made of.</summary>
    public TrueDevice? Device { get; init; }

    /// <summary>The common it sits on, where a property has several.</summary>
    public string? Common { get; init; }

    /// <summary>The controller it belongs to, where a property has several.</summary>
    public string? Controller { get; init; }
}
