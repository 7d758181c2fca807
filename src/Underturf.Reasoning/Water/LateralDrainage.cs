using System.Text.Json.Serialization;

namespace Underturf.Reasoning.Water;

/// <summary>What runs out of a lateral each time its valve shuts, by the heights that are noted.</summary>
/// <param name="Valve">As people call it; null where nobody has found one.</param>
/// <param name="Low">Outlets that go on running: the lowest.</param>
/// <param name="Later">Higher ones that run at first, until the water has sunk below them.</param>
/// <param name="HeadMetres">How high water stands over the lowest.</param>
/// <param name="LeastCubicMetres">That runs out each time.</param>
/// <param name="LeastSeconds">Until it has.</param>
/// <param name="Reckoned">Lengths or bores of the lateral are not noted: what is usual stands in.</param>
/// <param name="WithoutHeight">How many of its outlets have no height noted.</param>
/// <param name="Held">Outlets with check valves were fitted.</param>
public sealed record LateralDrainage(
    string Station,
    string Number,
    string? Valve,
    IReadOnlyList<LowOutlet> Low,
    IReadOnlyList<LowOutlet> Later,
    double HeadMetres,
    double LeastCubicMetres,
    double MostCubicMetres,
    double LeastSeconds,
    double MostSeconds,
    bool Reckoned,
    int WithoutHeight,
    bool Held)
{
    /// <summary>All outlets are as good as level with the highest water, so that nothing runs out.</summary>
    [JsonIgnore]
    public bool IsLevel => Low.Count == 0;

    /// <summary>What runs, how much and for how long.</summary>
    public string Say(WaterSay say)
    {
        var doubt = WithoutHeight > 0 ? $"; {(WithoutHeight == 1 ? "one outlet has" : $"{WithoutHeight} outlets have")} no height noted, and the lowest may be among them" : string.Empty;
        if (IsLevel)
        {
            return $"after it shuts next to nothing runs out: no water stands over the outlets{doubt}";
        }

        var later = Later.Count > 0 ? $"; {Names(Later)}, up to {say.Height(Later.Max(o => o.AboveMetres))} higher, stop before" : string.Empty;
        var usual = Reckoned ? " (lengths or bores as is usual)" : string.Empty;
        return $"after it shuts {Names(Low)} at the low end {(Low.Sum(o => o.Count) == 1 ? "goes" : "go")} on running: {say.Volume(LeastCubicMetres, MostCubicMetres)}{usual} {(Held ? "would stand" : "stand")} up to {say.Height(HeadMetres)} over {(Low.Sum(o => o.Count) == 1 ? "it" : "them")} and run out in {WaterSay.Time(LeastSeconds)} to {WaterSay.Time(MostSeconds)}{later}{doubt}";
    }

    /// <summary>What helps; nothing where nothing needs to.</summary>
    public string? Help(WaterSay say) => IsLevel ? null
        : Held ? $"outlets with check valves were fitted; they hold if made for {say.Height(HeadMetres)} of water"
        : $"outlets with check valves at the low end, made to hold {say.Height(HeadMetres)} of water";

    private static string Names(IReadOnlyList<LowOutlet> outlets) => string.Join(" and ", outlets.GroupBy(o => o.What).Select(g => g.Sum(o => o.Count) is var n && n == 1 ? $"one {g.Key}" : $"{n} {g.Key}s"));
}

/// <summary>Outlets of one kind at one height.</summary>
/// <param name="AboveMetres">Over the lowest of the lateral.</param>
public sealed record LowOutlet(string Id, string What, int Count, double AboveMetres);
