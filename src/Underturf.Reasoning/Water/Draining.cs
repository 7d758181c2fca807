using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>What runs out of a station's laterals once its valves shut: asks nothing of what is believed, so that it answers at once.</summary>
public static class Draining
{
    /// <param name="station">Id of a station.</param>
    /// <returns>One for each lateral; none where too few heights are noted to tell.</returns>
    public static IReadOnlyList<LateralDrainage> Of(PropertyHistory history, PracticeBook book, string station) =>
        history.Now.Outlets.Values.Any(o => history.Now.Identity.Of(o.Station) == station) ? new WaterCase(history, book).Drainage.Of(station) : [];
}
