using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>Something through which water can run while nothing should.</summary>
/// <param name="Id">Of the valve, or of the station whose valve nobody has found; of a piece of mainline its first pipe.</param>
/// <param name="Place">As people call it.</param>
/// <param name="Station">The station whose running hides it.</param>
/// <param name="Odds">Of having the fault, what was seen on the ground counted in.</param>
/// <param name="Fed">For each reading of the meter, whether it would show in it.</param>
/// <param name="Cured">Work has cured it since.</param>
/// <param name="Ways">What may lie before it, where nobody knows: all of these that no reading tells apart.</param>
internal sealed record LeakSource(WaterFault Fault, string Id, string Place, string? Station, MainPiece? Piece, double Odds, Fed Fed, bool Cured, IReadOnlyList<LeakWay> Ways)
{
    /// <summary>One thing by one or more ways, whatever was shut and held.</summary>
    public string Key { get; } = $"{Fault.Id}:{Id}:{string.Join(';', Ways.Select(w => w.Key))}";

    /// <summary>What no reading tells apart has the same.</summary>
    public string Signature { get; } = $"{Fault.Id}:{Fed.Key}";
}

/// <summary>What lies before something that may run, in one of the ways that nobody has ruled out.</summary>
/// <param name="Before">Isolation valves.</param>
internal sealed record LeakWay(IReadOnlyList<string> Before, bool BeyondMaster = false)
{
    public static readonly IReadOnlyList<LeakWay> Known = [new LeakWay([])];

    public string Key { get; } = string.Join(',', Before) + (BeyondMaster ? "|master" : string.Empty);

    /// <summary>As far as these valves go.</summary>
    public LeakWay Within(IReadOnlySet<string> valves) => new([.. Before.Where(valves.Contains)], BeyondMaster);
}
