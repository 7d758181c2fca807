using Underturf.FieldLog;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>Why a round that was put on at the place itself tells nothing.</summary>
internal static class TouchFaults
{
    public static (string Reason, string Remedy)? OfTurned(TouchFact fact, NamingWay way, bool[] put, int against, Bundle bundle) =>
        bundle.Wires.All(w => w.Controller == bundle.Place) ? ("puts it on ends of the controller itself", "Name the stations at whose valves it was put on under 'put', and the ends here under 'touched'")
        : way.Shows == NamingSign.Onward && put.Count(p => p) > 1 ? ($"puts '{way.Name}' on several ends, which does not tell whose valve it is", "Put it on one end at a time")
        : way.Back is null && way.Shows != NamingSign.Onward ? ($"puts '{way.Name}' on ends of the place itself, which that way is not for", "Name what carried it at the far side under 'put': stations, or ends at the controller")
        : against >= 0 && put[against] ? ("puts it on the very end that the other lead is on", "Name the ends that carried it under 'put', the one with the other lead under 'against'")
        : null;
}
