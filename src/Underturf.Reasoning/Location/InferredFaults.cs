using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Location;

/// <summary>What the diagnosis infers to lie in the ground: a fault on the way from one place to the next, with its probability.</summary>
internal sealed class InferredFaults(PropertyView view, PracticeBook practice, IReadOnlyList<OpenQuestion> questions)
{
    /// <summary>What is less likely to lie in the ground is not looked for there.</summary>
    private const double Least = 0.05;

    private readonly ILookup<string, string> byName = view.Controllers.Keys.Concat(view.Boxes.Keys).Concat(view.Valves.Keys).ToLookup(view.Name, StringComparer.Ordinal);

    public IEnumerable<Sought> Find() =>
        from question in questions
        where practice.Locating.Things.Contains(HiddenName.Fault)
        let stretches = Stretches(question)
        let total = stretches.Sum(s => s.Share)
        where total >= Least
        select new Sought(question.Id, HiddenName.Fault, Name(question), null, OwnGround.None, 1 - total) { Stretches = stretches };

    private static string Name(OpenQuestion question) => question.Stations.Count == 0
        ? $"{HiddenName.Fault} in the ground, {question.Symptom}"
        : $"{HiddenName.Fault} in the ground, {(question.Stations.Count == 1 ? "station" : "stations")} {NumberRuns.Say(question.Stations)}";

    /// <summary>Explanations share what they say of a run: their probabilities of it add up. A doubt puts nothing into the ground, nor does what asks for no repair.</summary>
    private IReadOnlyList<Stretch> Stretches(OpenQuestion question) =>
    [
        .. question.Explanations.Where(e => !e.Doubt && e.Repair.Length > 0)
            .SelectMany(e => e.Places.Where(p => p.From is not null).Select(p => (From: p.From!, To: p.Place, Share: e.Probability * p.Probability)))
            .GroupBy(p => (p.From, p.To))
            .Select(run => Stretch(run.Key.From, run.Key.To, run.Sum(p => p.Share)))
            .OfType<Stretch>(),
    ];

    private Stretch? Stretch(string from, string to, double share)
    {
        var ids = (From: byName[from].FirstOrDefault(), To: byName[to].FirstOrDefault());
        if (ids.From is null || ids.To is null || view.PositionOf(ids.From) is not { } start || view.PositionOf(ids.To) is not { } end || start == end)
        {
            return null;
        }

        var drawn = view.Cables.Values.FirstOrDefault(c => c.Route.Count > 1 && Joins(c, ids.From, ids.To));
        var bow = drawn is null ? 0.5 * start.DistanceMetresTo(end) * Math.Sqrt((practice.Wire.Detour * practice.Wire.Detour) - 1) : 0;
        return new Stretch(GroundShape.Line(drawn?.Route ?? [start, end]), share, Reach, bow);
    }

    private bool Joins(CableFact cable, string one, string other) =>
        (view.Identity.Of(cable.From), view.Identity.Of(cable.To)) is var ends && (ends == (one, other) || ends == (other, one));

    /// <summary>How far things on a conductor lie from its way, by the practice book.</summary>
    private double Reach => practice.Locating.Marks.Where(m => m.Of == "route" && m.HoldsFor(HiddenName.Fault)).Select(m => m.ReachMetres).DefaultIfEmpty(practice.Locating.CellMetres).Max();
}
