using Underturf.FieldApp;
using Underturf.Planning.Day;
using Underturf.Planning.Repair;
using Underturf.Planning.Rework;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Water;

namespace Underturf.Browser;

/// <summary>Finds nothing in any log, and answers nothing else: a test says itself what it wants answered.</summary>
internal abstract class SilentNotebook : INotebook
{
    /// <summary>How often a log was thought about.</summary>
    public int Thought { get; private set; }

    /// <summary>What is found in any log.</summary>
    protected virtual OpenedLog Found => new(new Answers("0.1.0", "1", [], []), []);

    public Task<Outcome<OpenedLog>> OpenAsync(ReadOnlyMemory<byte> log, Waiting waiting)
    {
        Thought++;
        return Task.FromResult<Outcome<OpenedLog>>(Found);
    }

    public virtual Task<Outcome<IReadOnlyList<MadePaper>>> MakePapersAsync(ReadOnlyMemory<byte> log, Waiting waiting) => throw Unasked("makes papers");

    public virtual Task<Outcome<Planned<ReworkAnswer>>> PlanReworkAsync(ReadOnlyMemory<byte> log, Waiting waiting) => throw Unasked("plans a rework");

    public virtual Task<Outcome<FlowLines>> FlowAsync(ReadOnlyMemory<byte> log, Waiting waiting) => throw Unasked("asks what water does");

    public virtual Task<Outcome<PlannedDay>> PlanDayAsync(ReadOnlyMemory<byte> log, DayAsk ask, Waiting waiting) => throw Unasked("orders a day");

    public virtual Task<Outcome<Planned<RepairAnswer>>> PlanRepairAsync(ReadOnlyMemory<byte> log, string thing, Waiting waiting) => throw Unasked("plans a repair");

    public virtual Task<Outcome<NamingAnswer>> NameAsync(ReadOnlyMemory<byte> log, NamingAsk ask, Waiting waiting) => throw Unasked("names ends");

    public virtual Task<Outcome<LocatedThing>> LocateAsync(ReadOnlyMemory<byte> log, LocateAsk ask, Waiting waiting) => throw Unasked("looks for anything");

    private static InvalidOperationException Unasked(string what) => new($"No test here {what}.");
}
