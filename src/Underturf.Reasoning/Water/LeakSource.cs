using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>Something through which water can run while nothing should.</summary>
/// <param name="Id">Of the valve, or of the station whose valve nobody has found; of a piece of mainline its first pipe.</param>
/// <param name="Place">As people call it.</param>
/// <param name="Station">The station whose running hides it.</param>
/// <param name="Odds">Of having the fault, what was seen on the ground counted in.</param>
/// <param name="Fed">For each reading of the meter, whether it would show in it.</param>
/// <param name="Cured">Work has cured it since.</param>
internal sealed record LeakSource(WaterFault Fault, string Id, string Place, string? Station, MainPiece? Piece, double Odds, Fed Fed, bool Cured)
{
    /// <summary>What no reading tells apart has the same.</summary>
    public string Signature { get; } = $"{Fault.Id}:{Fed.Key}";
}
