namespace Underturf.Simulation;

/// <summary>The part of a whole property that the truth's file tells.</summary>
internal sealed record PlanTruth(IReadOnlyList<PhaseTruth> Phases, IReadOnlyList<BoxTruth> Boxes, IReadOnlyList<ValveTruth> Valves)
{
    public static PlanTruth Of(PropertyPlan plan) => new(
        [.. plan.Phases.Select(p => new PhaseTruth(p.Years, p.StationAwg, p.CommonAwg, p.CoilOhms, p.Splices, p.OwnCommon))],
        [.. plan.Boxes.Select((b, i) => new BoxTruth(b.Id, b.At.EastMetres, b.At.NorthMetres, b.Parent < 0 ? PropertyPlan.ControllerId(b.Controller) : plan.Boxes[b.Parent].Id, b.Phase + 1, b.Buried, plan.Runs[(i, 0)].Metres))],
        [.. plan.Stations.Select(s => new ValveTruth(s.Id, plan.Boxes[s.Box].Id, s.Phase + 1, plan.CommonOf(s), Changes(plan, s)))]);

    /// <summary>Runs of a station along which its gauge changes.</summary>
    private static string[] Changes(PropertyPlan plan, PlannedStation station) =>
    [
        .. plan.Chain(station)
            .Select(b => (Box: b, Run: plan.Runs[(b, station.Phase)]))
            .Where(r => r.Run.ChangesAt is not null)
            .Select(r => $"to {plan.Boxes[r.Box].Id}: {r.Run.Awg} AWG, then {r.Run.ThenAwg} AWG after {r.Run.ChangesAt:P0}"),
    ];
}

/// <summary>A phase as it was built.</summary>
internal sealed record PhaseTruth(double Years, int StationAwg, int CommonAwg, double CoilOhms, string Splices, bool OwnCommon);

/// <summary>A box as it lies, with the run to it.</summary>
internal sealed record BoxTruth(string Id, double EastMetres, double NorthMetres, string From, int Phase, bool Buried, double RunMetres);

/// <summary>A station's valve as it lies.</summary>
internal sealed record ValveTruth(string Station, string Box, int Phase, string Common, IReadOnlyList<string> Changes);
