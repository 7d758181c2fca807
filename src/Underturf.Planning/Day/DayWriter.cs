namespace Underturf.Planning.Day;

/// <summary>Writes the order down line by line, with the clock.</summary>
internal sealed class DayWriter(Grounds grounds, Tickets tickets, DayProgram program)
{
    private const string Prove = "Prove zero pressure before anything is opened; muddy water must not flow back into the main; no energising with hands in.";

    private const string Fill = "Open slowly, let the air out, people clear of the outlets.";

    private readonly List<DayRow> rows = [];
    private double at;
    private double square;

    public IReadOnlyList<DayRow> Rows(IReadOnlyList<int> order)
    {
        var before = -1;
        foreach (var number in order)
        {
            var (job, way) = (program.Jobs[number], program.Way(before, number));
            Calls(way, before < 0 ? null : program.Jobs[before], job);
            at = Math.Max(at + way.WalkMinutes, program.Errands.Errands[number].Earliest);
            square += job.SpreadMinutes * job.SpreadMinutes;
            rows.Add(Row(job, way.WalkMinutes));
            at += rows[^1].Minutes;
            before = number;
        }

        if (before >= 0)
        {
            Calls(program.Home(before), program.Jobs[before], null);
        }

        return rows;
    }

    private DayRow Row(Job job, double walk)
    {
        var marks = job.Digs ? grounds.Numbers.MarksMinutes : 0;
        string[] cautions = [.. job.Digs ? tickets.Cautions(job) : [], .. job.Steps.Select(s => s.Caution).Where(c => c.Length > 0).Distinct()];
        IReadOnlyList<DayStep> steps = job.Digs ? [new DayStep("walk along the utility marks", marks, string.Empty), .. job.Steps] : job.Steps;
        return new DayRow((RowKind)job.Kind, job.Say, grounds.View.Name(job.Place), job.Place, grounds.Begin.AddMinutes(at), walk, job.Minutes + marks, Math.Sqrt(square), job.Worth, job.Stations, steps, cautions);
    }

    private void Calls(Leg way, Job? before, Job? job)
    {
        foreach (var call in way.Calls)
        {
            at += call.WalkMinutes;
            var say = call.Opens ? $"let the water in again slowly: {call.Valve.Name}" : $"shut {call.Valve.Name}";
            var dry = call.Opens ? before?.Dry : job?.Dry;
            rows.Add(new DayRow(call.Opens ? RowKind.Open : RowKind.Shut, say, grounds.View.Name(call.Valve.Id), call.Valve.Id, grounds.Begin.AddMinutes(at), call.WalkMinutes, call.Minutes, Math.Sqrt(square), 0, dry ?? [], [], [call.Opens ? Fill : Prove]));
            at += call.Minutes;
        }
    }
}
