using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>Gathers what the notes say of one box.</summary>
/// <param name="box">The id that stands for it.</param>
internal sealed class BoxReader(PropertyHistory history, string box)
{
    private readonly PropertyView view = history.Now;
    private readonly bool us = history.Facts.UsesUsUnits;

    public BoxCard Card()
    {
        var fact = view.Boxes[box];
        return new BoxCard(
            box,
            view.Name(box),
            fact.Size,
            fact.Position,
            fact.Sure,
            fact.Note,
            new JointFinder(view, box).Joints(),
            [.. view.Valves.Where(v => IsHere(v.Value.Box)).OrderBy(v => view.Name(v.Key), NaturalOrder.Instance).Select(v => Valve(v.Key, v.Value))],
            [.. view.Cables.Where(c => IsHere(c.Value.From) || IsHere(c.Value.To)).Select(c => Run(c.Key, c.Value))],
            [.. history.Facts.Looks.Where(l => IsHere(l.Fact.Place)).SelectMany(Found)],
            [.. history.Facts.Works.Where(w => IsHere(w.Fact.Place) || IsHere(w.Fact.Target)).Select(w => new BoxWork(w.Fact.Did, On(w.Fact), w.At))],
            history.Facts.LeftAs.LastOrDefault(l => IsHere(l.Fact.Place)));
    }

    private bool IsHere(string? place) => place is not null && view.Identity.Of(place) == box;

    private BoxValve Valve(string id, ValveFact valve)
    {
        var coil = view.Coils.Values.FirstOrDefault(c => view.Identity.Of(c.Valve) == id && c.Ohms is not null);
        string?[] facts =
        [
            BoxWords.Size(valve.Size, us),
            valve.Body,
            valve.Screws is { } screws ? $"{screws} bonnet screws" : null,
            valve.Thread is { } thread ? $"coil thread {thread}" : null,
            valve.Make,
            coil?.Ohms is { } ohms ? $"coil's plate {ohms.Ohms:0.#} ohm" : null,
        ];
        return new BoxValve(id, view.Name(id), valve.Station is { } station ? view.StationNumber(station) : null, valve.Waters, valve.Sure, [.. facts.OfType<string>()]);
    }

    private BoxRun Run(string id, CableFact cable)
    {
        string?[] facts =
        [
            BoxWords.Length(cable.Length, us),
            cable.Gauge is { } gauge ? $"{gauge.Say(us)}{(cable.CommonGauge is { } common && common != gauge ? $", common {common.Say(us)}" : "")}" : null,
            cable.Conductors is { } count ? $"{count} conductors" : null,
            cable.Carries.Count > 0 ? $"carries {NumberRuns.Say(cable.Carries.Select(view.StationNumber))}" : null,
        ];
        return new BoxRun(id, view.Name(IsHere(cable.From) ? cable.To : cable.From), cable.Sure, [.. facts.OfType<string>()]);
    }

    private IEnumerable<BoxFinding> Found(Observed<LookFact> look) =>
        look.Fact.Found.Select(found => new BoxFinding(found, [.. look.Fact.Stations.Select(view.StationNumber)], look.At, look.Fact.Sure));

    private string? On(WorkFact work) => work.Target is { } target && !IsHere(target) ? view.Name(target) : null;
}
