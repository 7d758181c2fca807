using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// Whose places watered besides the station's own. Two stations that are crossed or swapped water each other's places; a valve that nobody
/// knew of seldom waters a place that another station is noted to water.
/// </summary>
/// <param name="Owners">Stations of the same controller that are noted to water a place that was seen watering.</param>
/// <param name="Nobodys">Places that watered and that no station is noted to water.</param>
/// <param name="Named">Stations of the controller whose places are noted.</param>
internal sealed record Elsewhere(IReadOnlyList<string> Owners, int Nobodys, IReadOnlyCollection<string> Named)
{
    public static Elsewhere Nothing { get; } = new([], 0, []);

    public static Elsewhere Of(string station, IReadOnlyList<string> watered, PropertyView view)
    {
        var controller = view.Identity.Of(view.Stations[station].Controller);
        var named = view.Stations
            .Where(s => s.Value.Waters.Count > 0 && view.Identity.Of(s.Value.Controller) == controller)
            .ToDictionary(s => s.Key, s => s.Value.Waters);
        var foreign = watered.Except(named.GetValueOrDefault(station) ?? [], StringComparer.OrdinalIgnoreCase).ToList();
        var owners = named.Where(n => n.Key != station && n.Value.Intersect(foreign, StringComparer.OrdinalIgnoreCase).Any()).Select(n => n.Key).ToList();
        var owned = owners.SelectMany(o => named[o]);
        return new Elsewhere(owners, foreign.Except(owned, StringComparer.OrdinalIgnoreCase).Count(), named.Keys);
    }

    /// <summary>Chance that the places seen besides the station's own are just these, given how many there are.</summary>
    public double Chance(string station, Suspect[] active, RunPractice run) =>
        Owners.Count + Nobodys == 0 || !Named.Contains(station) ? 1 : ChanceOfSeen(station, active, run);

    private double ChanceOfSeen(string station, Suspect[] active, RunPractice run)
    {
        var partner = active.Where(s => s.IsPair).Select(s => s.Station == station ? s.Other : s.Station).FirstOrDefault(Named.Contains);
        var chance = partner is null ? 1 : Owners.Contains(partner) ? run.PartnerNamed : 1 - run.PartnerNamed;
        var others = Owners.Count(o => o != partner);
        return chance
            * Math.Pow(run.AnothersPlace / Math.Max(1, Named.Count - 1), others)
            * Math.Pow(1 - run.AnothersPlace, Nobodys);
    }
}
