using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>What the worker is asked about the conductor ends of a place; what is not said is as in the practice book.</summary>
/// <param name="Place">Id of the place.</param>
/// <param name="People">One walks for each change, two call it out.</param>
/// <param name="Remote">True where one can switch stations from the place.</param>
/// <param name="Plan">Name of the plan that was chosen; the cheapest is followed where none is.</param>
/// <param name="Source">True where a portable 24 V source is at hand.</param>
public sealed record NamingAsk(string Place, int? People, bool? Remote, string? Plan, bool Source)
{
    public NamingCrew ToCrew() => new(People, Remote, Plan, Source);
}
