using Underturf.FieldLog;
using Underturf.Reasoning;

namespace Underturf.Planning.Day;

/// <summary>The next moves of all open questions, and ends to be named. A repair that has a plan of its own, or that the rework does, is left to those.</summary>
internal sealed class MoveJobs(Grounds grounds)
{
    private const string Known = "enough known: ";

    public IEnumerable<Job> Find() => grounds.Answers.Moves.Where(m => m.Place.Length > 0 && !IsPlanned(m)).Select(Of).Concat(grounds.Answers.Naming.Select(Of));

    private bool IsPlanned(Move move) => move.IsRepair && (grounds.Repairs.Items.Any(i => i.Plan is not null && i.Question == move.Question) || ReworkJobs.Does(grounds, move));

    private Job Of(Move move)
    {
        var work = move.Steps.Select(s => s.Asks).OfType<WorkFact>().FirstOrDefault();
        var (shut, dry) = work is not null && grounds.Numbers.OpensWater.Contains(work.Did) ? grounds.Isolation(work.Target ?? move.Place) : ([], []);
        var say = string.Join("; ", move.Steps.Select(s => Plain(s.Action)));
        return new Job($"move {move.Question} {move.Place}", move.IsRepair ? JobKind.Repair : JobKind.FindOut, say, move.Place, move.Steps.Sum(s => s.Minutes), 0, move.Worth, Stations(move.Question))
        {
            Steps = [.. move.Steps.Select(s => new DayStep(Plain(s.Action), s.Minutes, s.Caution))],
            Shut = shut,
            Dry = dry,
            Digs = (work is not null && grounds.Numbers.Digs.Contains(work.Did)) || !grounds.IsFound(move.Place),
            Things = [.. Stations(move.Question).SelectMany(n => grounds.StationsByNumber[n])],
        };
    }

    private static Job Of(NamingMove move) => new($"name {move.Place}", JobKind.Name, $"name the ends, {move.Unnamed} of {move.Ends} without a name: {move.Plan}", move.Place, move.Minutes - move.WalkMinutes, 0, move.Worth, [])
    {
        Steps = [new DayStep(move.Plan, move.Minutes - move.WalkMinutes, move.Caution)],
    };

    /// <summary>As an instruction: why it is one now, the order of the day need not say.</summary>
    private static string Plain(string action) => action.StartsWith(Known, StringComparison.Ordinal) ? action[Known.Length..] : action;

    private IReadOnlyList<string> Stations(string question) => grounds.Answers.Questions.FirstOrDefault(q => q.Id == question)?.Stations ?? [];
}
