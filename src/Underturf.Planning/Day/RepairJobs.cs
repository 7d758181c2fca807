using Underturf.Planning.Repair;

namespace Underturf.Planning.Day;

/// <summary>Repairs that have a plan, of questions about which nothing is worth finding out any more, and those that are begun.</summary>
internal sealed class RepairJobs(Grounds grounds)
{
    public IEnumerable<Job> Find()
    {
        var asked = grounds.Answers.Moves.Where(m => !m.IsRepair).Select(m => m.Question).ToHashSet(StringComparer.Ordinal);
        return grounds.Repairs.Items.Where(i => i.Plan is { IsDone: false } && !asked.Contains(i.Question) && !ReworkJobs.Parts(grounds, i)).Select(i => Of(i, i.Plan!));
    }

    /// <summary>The minutes of shutting off are counted where the water is shut: one shut serves all that need it.</summary>
    private Job Of(RepairItem item, RepairAnswer plan)
    {
        var turn = grounds.Book.Water.Isolating.TurnMinutes;
        return new Job($"repair {plan.Thing}", JobKind.Repair, $"{plan.Name}: {plan.Choice.Say}", plan.Place, Math.Max(0, (double)item.Minutes - (plan.Shut?.Minutes ?? 0)), (double)item.SpreadMinutes, item.Worth, plan.Stations)
        {
            Steps = [.. plan.Steps.Select(s => new DayStep(s.Say, (double)s.Minutes, s.Caution))],
            Shut = [.. (plan.Shut?.Ids ?? []).Zip(plan.Shut?.Names ?? [], (id, name) => new Shutter(id, name, turn))],
            Dry = plan.Shut?.Dry ?? [],
            Digs = plan.Permissions.Any(p => p.Kind == PermissionKind.LocateTicket) || !grounds.IsFound(plan.Place),
            Consents = [.. plan.Permissions.Select(Of).OfType<Consent>()],
            Things = [plan.Thing, .. plan.Stations.SelectMany(n => grounds.StationsByNumber[n])],
            Load = [.. plan.Choice.Parts.Select(p => $"{p.Count:0.#} {(p.Unit.Length > 0 ? $"{p.Unit} " : string.Empty)}{p.What}")],
        };
    }

    private static Consent? Of(Permission permission) => permission.Kind switch
    {
        PermissionKind.Owner => new Consent(WantKind.Owner, permission.Say, permission.Why),
        PermissionKind.Arborist => new Consent(WantKind.Arborist, permission.Say, permission.Why),
        _ => null,
    };
}
