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
    IReadOnlyList<string> Waters);
