using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Planning.Repair;

/// <summary>How far the repair of a valve is, as the log has it: it goes on where it was left, whoever goes on with it.</summary>
/// <param name="Done">Keys of the steps that are done and still hold.</param>
/// <param name="Seen">Causes that somebody saw.</param>
/// <param name="Worked">What was done to it since it was opened the last time.</param>
/// <param name="Vain">What was tried and did not cure it.</param>
/// <param name="Faults">What it was repaired for, by ids of the practice book: work ends what belief says, whether or not it cured.</param>
internal sealed record RepairRound(IReadOnlySet<string> Done, IReadOnlySet<string> Seen, RepairKind? Worked, IReadOnlyList<RepairKind> Vain, IReadOnlySet<string> Faults)
{
    /// <summary>As the log names the job.</summary>
    public const string Job = "valve repair";

    private const string SawPrefix = "saw ";
    private const string WorkPrefix = "did ";
    private const string FaultPrefix = "for ";
    private const string VainPrefix = "not so: ";

    /// <summary>Steps that hold whatever comes after them, until the place is closed.</summary>
    private static readonly string[] Lasting = [RepairSteps.Reached, RepairSteps.Opened];

    /// <summary>It was closed up, and nothing has been done since.</summary>
    public bool IsClosed { get; private init; }

    /// <summary>When the first of its steps was done; nothing where none was.</summary>
    public Moment? Begun { get; private init; }

    public bool IsBegun => Done.Count > 0 || Worked is not null || Vain.Count > 0;

    public static StepFact Noted(string valve, string step) => new() { Job = Job, Place = valve, Step = step };

    public static StepFact Saw(string valve, string cause) => Noted(valve, SawPrefix + cause);

    public static StepFact For(string valve, string fault) => Noted(valve, FaultPrefix + fault);

    public static StepFact Did(string valve, RepairKind kind) => Noted(valve, WorkPrefix + kind.ToString().ToLowerInvariant());

    public static StepFact NotSo(string valve, string step) => Noted(valve, VainPrefix + step);

    public static RepairRound Of(PropertyHistory history, string valve)
    {
        var identity = history.Now.Identity;
        var steps = history.Facts.Steps.Where(s => s.Fact.Job == Job && identity.Of(s.Fact.Place) == valve).OrderBy(s => s.Moment).ToList();
        var own = steps[(steps.FindLastIndex(s => s.Fact.Step == RepairSteps.Closed) + 1)..];
        var none = new RepairRound(new HashSet<string>(), new HashSet<string>(), null, [], new HashSet<string>()) { IsClosed = steps.Count > 0 && own.Count == 0, Begun = own.FirstOrDefault()?.Moment };
        return own.Aggregate(none, (round, step) => round.And(step.Fact.Step));
    }

    private RepairRound And(string step)
    {
        if (step.StartsWith(SawPrefix, StringComparison.Ordinal))
        {
            return this with { Seen = Seen.Append(step[SawPrefix.Length..]).ToHashSet(StringComparer.Ordinal) };
        }

        if (step.StartsWith(FaultPrefix, StringComparison.Ordinal))
        {
            return this with { Faults = Faults.Append(step[FaultPrefix.Length..]).ToHashSet(StringComparer.Ordinal) };
        }

        if (step.StartsWith(VainPrefix, StringComparison.Ordinal))
        {
            return this with { Done = Done.Intersect(Lasting).ToHashSet(StringComparer.Ordinal), Worked = null, Vain = Worked is { } kind ? [.. Vain, kind] : Vain };
        }

        return step.StartsWith(WorkPrefix, StringComparison.Ordinal) && Enum.TryParse<RepairKind>(step[WorkPrefix.Length..], true, out var done)
            ? this with { Worked = done }
            : this with { Done = Done.Append(step).ToHashSet(StringComparer.Ordinal) };
    }
}
