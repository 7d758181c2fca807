using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>Water that somebody saw running where it should not, and what was done about it since, as the log has it.</summary>
/// <param name="Place">Where it runs.</param>
/// <param name="Since">When that was noted.</param>
/// <param name="HasStopped">Somebody saw it stop.</param>
/// <param name="Left">How the place was left after that, where somebody noted it: then it is over.</param>
public sealed record RunningWater(string Place, DateTimeOffset Since, bool HasStopped, Observed<LeftAsFact>? Left)
{
    /// <summary>As the log names the job.</summary>
    public const string Job = "water running";

    public const string Begun = "begun";

    public const string Stopped = "stopped";

    /// <summary>As the log names a controller and a point of connection that were put out of work.</summary>
    public const string ControllerOff = "controller off";

    public const string SupplyOff = "water off";

    private IReadOnlyList<Fact> done = [];

    /// <summary>Nothing where it is over, or nobody noted any.</summary>
    public static RunningWater? Of(PropertyHistory history)
    {
        var (facts, identity) = (history.Facts, history.Facts.Identity);
        var steps = facts.Steps.Where(s => s.Fact.Job == Job).ToList();
        if (steps.Where(s => s.Fact.Step == Begun).MaxBy(s => s.Moment) is not { } begun)
        {
            return null;
        }

        var place = identity.Of(begun.Fact.Place);
        var stopped = steps.Where(s => s.Fact.Step == Stopped && s.Moment > begun.Moment).MaxBy(s => s.Moment);
        var left = stopped is null ? null : facts.LeftAs.Where(l => identity.Of(l.Fact.Place) == place && l.Moment > stopped.Moment).MaxBy(l => l.Moment);
        return new RunningWater(place, begun.At, stopped is not null, left)
        {
            done =
            [
                .. steps.Where(s => s.Moment > begun.Moment).Select(s => s.Fact),
                .. facts.Settings.Where(s => s.Moment > begun.Moment).GroupBy(s => identity.Of(s.Fact.Of)).Select(g => g.MaxBy(s => s.Moment)!.Fact with { Of = g.Key }),
                .. facts.LeftAs.Where(l => l.Moment > begun.Moment).Select(l => l.Fact with { Place = identity.Of(l.Fact.Place) }),
            ],
        };
    }

    /// <summary>A step of it, as it is noted.</summary>
    public static StepFact Noted(string place, string step) => new() { Job = Job, Place = place, Step = step };

    /// <summary>Whether a note of this has been made since it was seen running, and stands.</summary>
    public bool Has(Fact note) => done.Any(d => (d, note) switch
    {
        (StepFact a, StepFact b) => a.Step == b.Step,
        (SettingFact a, SettingFact b) => a.Of == b.Of && a.State == b.State,
        (LeftAsFact a, LeftAsFact b) => a.Place == b.Place && a.State == b.State,
        _ => false,
    });
}
