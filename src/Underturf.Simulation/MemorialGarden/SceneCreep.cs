using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Simulation;

/// <summary>What really runs in the garden while everything is off.</summary>
/// <param name="Valve">It does not close.</param>
/// <param name="Behind">Isolation valves that shut it off too.</param>
/// <param name="Flow">What it lets through.</param>
/// <param name="Cause">What one sees once it is opened, by its name in the practice book.</param>
internal sealed record SceneCreep(string Valve, IReadOnlyList<string> Behind, string Flow, string Cause)
{
    /// <summary>The meter as it reads by how the valves were turned and what work was done up to now.</summary>
    public ReadingFact Read(ReadingFact asked, PropertyHistory history)
    {
        var isShut = history.Facts.Settings.GroupBy(s => s.Fact.Of).Any(s => (s.Key == Valve || Behind.Contains(s.Key)) && s.MaxBy(x => x.Moment)!.Fact.State == "shut");
        var isCured = history.Facts.Works.Any(w => w.Fact.Did == "valve rebuilt" && (w.Fact.Target is { } target && (target == Valve || history.Now.ValvesOf(target).Any(v => v.Id == Valve))));
        return asked with { Value = Shown.Parse(isShut || isCured ? "0 gpm" : Flow).Value };
    }
}
