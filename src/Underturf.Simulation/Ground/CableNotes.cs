using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Quantities;

namespace Underturf.Simulation;

/// <summary>
/// The runs as a technician knows them: from a box that was found to the one found before it, whatever is buried between, with the gauge
/// seen where the conductors come in, and a length taped, told, paced or not known.
/// </summary>
internal sealed class CableNotes(PropertyPlan plan, SeededGenerator chance, Action<Fact> note)
{
    /// <summary>Spreads of what people say of a length; tails are heavier than the model's.</summary>
    private static readonly (Grade Sure, double Spread, double StepMetres, double Weight)[] Ways =
        [(Grade.Measured, 0.02, 0.5, 0.35), (Grade.Told, 0.12, 5, 0.2), (Grade.Estimated, 0.15, 1, 0.2), (Grade.Unknown, 0, 0, 0.25)];

    private const double GaugeSeen = 0.9;

    public void Write()
    {
        foreach (var box in plan.Boxes.Where(b => !b.Buried))
        {
            var (b, before) = (int.Parse(box.Id.AsSpan(1), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture), box.Parent);
            var metres = Metres(b);
            for (; before >= 0 && plan.Boxes[before].Buried; before = plan.Boxes[before].Parent)
            {
                metres += Metres(before);
            }

            foreach (var phase in Enumerable.Range(0, plan.Phases.Count))
            {
                Note(b, before, phase, metres);
            }
        }
    }

    private double Metres(int box) => plan.Runs[(box, 0)].Metres;

    private void Note(int box, int before, int phase, double metres)
    {
        var carried = plan.Stations.Where(s => s.Phase == phase && plan.Chain(s).Contains(box)).Select(s => s.Id).ToList();
        if (carried.Count == 0)
        {
            return;
        }

        var (way, known) = (chance.PickWeighted([.. Ways.Select(w => (w, w.Weight))]), chance.Happens(GaugeSeen));
        var run = plan.Runs[(box, phase)];
        note(new CableFact
        {
            Id = $"k{phase + 1}-{box}",
            From = before < 0 ? PropertyPlan.ControllerId(plan.Boxes[box].Controller) : plan.Boxes[before].Id,
            To = plan.Boxes[box].Id,
            Carries = carried,
            Length = way.Sure == Grade.Unknown ? null : new Length(Said(metres, way.Spread, way.StepMetres)),
            Gauge = known ? WireSize.FromAwg(run.ChangesAt is null ? run.Awg : run.ThenAwg) : null,
            CommonGauge = known ? WireSize.FromAwg(plan.Phases[phase].CommonAwg) : null,
            Sure = way.Sure,
        });
    }

    private double Said(double metres, double spread, double step) => Math.Max(step, step * Math.Round(metres * Math.Exp(spread * chance.HeavyTailed() / 2) / step));
}
