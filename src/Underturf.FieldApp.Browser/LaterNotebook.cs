using System.Runtime.CompilerServices;
using Underturf.FieldApp.Thinking;
using Underturf.Planning.Day;
using Underturf.Planning.Repair;
using Underturf.Planning.Rework;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Water;

namespace Underturf.FieldApp.Browser;

/// <summary>The core in a worker, asked once the rooms that it takes are here.</summary>
internal sealed class LaterNotebook(ILateRooms rooms) : INotebook
{
    private INotebook? notebook;

    public Task<Outcome<OpenedLog>> OpenAsync(ReadOnlyMemory<byte> log, Waiting waiting) => AskAsync(waiting, n => n.OpenAsync(log, waiting));

    public Task<Outcome<IReadOnlyList<MadePaper>>> MakePapersAsync(ReadOnlyMemory<byte> log, Waiting waiting) => AskAsync(waiting, n => n.MakePapersAsync(log, waiting));

    public Task<Outcome<Planned<ReworkAnswer>>> PlanReworkAsync(ReadOnlyMemory<byte> log, Waiting waiting) => AskAsync(waiting, n => n.PlanReworkAsync(log, waiting));

    public Task<Outcome<FlowLines>> FlowAsync(ReadOnlyMemory<byte> log, Waiting waiting) => AskAsync(waiting, n => n.FlowAsync(log, waiting));

    public Task<Outcome<PlannedDay>> PlanDayAsync(ReadOnlyMemory<byte> log, DayAsk ask, Waiting waiting) => AskAsync(waiting, n => n.PlanDayAsync(log, ask, waiting));

    public Task<Outcome<Planned<RepairAnswer>>> PlanRepairAsync(ReadOnlyMemory<byte> log, string thing, Waiting waiting) => AskAsync(waiting, n => n.PlanRepairAsync(log, thing, waiting));

    public Task<Outcome<NamingAnswer>> NameAsync(ReadOnlyMemory<byte> log, NamingAsk ask, Waiting waiting) => AskAsync(waiting, n => n.NameAsync(log, ask, waiting));

    public Task<Outcome<LocatedThing>> LocateAsync(ReadOnlyMemory<byte> log, LocateAsk ask, Waiting waiting) => AskAsync(waiting, n => n.LocateAsync(log, ask, waiting));

    private async Task<Outcome<T>> AskAsync<T>(Waiting waiting, Func<INotebook, Task<Outcome<T>>> ask)
    {
        if (await rooms.AllAsync() is { } missing)
        {
            return missing;
        }

        waiting.Cancellation.ThrowIfCancellationRequested();
        return await ask(notebook ??= Make());
    }

    /// <summary>By itself: whatever names a type of a late room can be run only once that is here.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static INotebook Make() => new BrowserNotebook();
}
