using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Identification;

/// <summary>The next round of a plan in a technician's words.</summary>
internal sealed class RoundWriter(Bundle bundle, PlanDesk desk)
{
    public NamingRound Write(NextTouches next)
    {
        var (way, turned) = (next.Plan.Way, next.Plan.Turned);
        var put = Enumerable.Range(0, next.Put.Length).Where(one => next.Put[one]).ToList();
        var against = way.NeedsCommon && desk.Common >= 0 ? bundle.Ends[desk.Common].Ends[0] : null;
        return new NamingRound(
            way.Name,
            Say(next, put.Count),
            [.. put.Select(one => bundle.IdOf(one, isWire: !turned))],
            Said(bundle, put, turned),
            [.. next.Touch.Select(one => bundle.IdOf(one, isWire: turned))],
            [.. next.Touch.Select(one => bundle.NameOf(one, isWire: turned))],
            next.Plan.Routine == Routine.OneByOne && way.Shows == NamingSign.Answers,
            against?.Id,
            against?.Name,
            way.Shows == NamingSign.Ohms ? [.. desk.Fitted(turned).Where(f => !desk.IsFitted(f.Of, turned)).Select(f => Fit(f.Of, f.Ohms, turned))] : [],
            desk.Minutes(next),
            next.Bits,
            way.CautionOf(turned))
        {
            FromPlace = turned,
        };
    }

    private string Say(NextTouches next, int put)
    {
        var say = next.Plan.Way.SayOf(next.Plan.Turned);
        return next.Plan.Routine == Routine.OneTrip && put > 1 ? $"{say}, all of these joined together; over range means that {bundle.Ends[desk.Common].Ends[0].Name} is not the common" : say;
    }

    private ResistorFit Fit(int one, double ohms, bool turned) =>
        new(bundle.IdOf(one, isWire: turned), bundle.NameOf(one, isWire: turned), Diagnosis.Say.Figure(ohms, Dimension.Resistance), ohms);

    /// <summary>What carries it: "common, stations 1 to 4 and 9"; "end 2, end 5" where it is put on at the place.</summary>
    public static string Said(Bundle bundle, IEnumerable<int> put, bool turned)
    {
        if (turned)
        {
            return string.Join(", ", put.Select(e => bundle.NameOf(e, isWire: false)));
        }

        var wires = put.Select(w => bundle.Wires[w]).ToList();
        var stations = wires.Where(w => w.Role == WireRole.Station).ToList();
        var (runs, others) = (NumberRuns.Say(stations.Select(w => w.Short)), wires.Where(w => w.Role != WireRole.Station).Select(w => w.Name));
        return string.Join(", ", stations.Count == 0 ? others : others.Append($"station{(stations.Count == 1 ? string.Empty : "s")} {runs}"));
    }
}
