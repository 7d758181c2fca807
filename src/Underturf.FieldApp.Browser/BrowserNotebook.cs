using System.Text.Json;
using Underturf.Planning.Day;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.FieldApp.Browser;

/// <summary>The core, run in a worker of the browser.</summary>
internal sealed class BrowserNotebook : INotebook
{
    private int asked;

    public async Task<Outcome<OpenedLog>> OpenAsync(ReadOnlyMemory<byte> log, Waiting waiting)
    {
        var answer = await AskAsync(nameof(Thinker.Answer), log, waiting);
        return answer.Succeeded ? JsonSerializer.Deserialize(answer.Value, OpenedLogJson.Default.OpenedLog)! : answer.Problem!;
    }

    public async Task<Outcome<IReadOnlyList<MadePaper>>> MakePapersAsync(ReadOnlyMemory<byte> log, Waiting waiting)
    {
        var papers = await AskAsync(nameof(Thinker.Papers), log, waiting);
        return papers.Succeeded ? JsonSerializer.Deserialize(papers.Value, MadePapersJson.Default.MadePaperArray)! : papers.Problem!;
    }

    public async Task<Outcome<PlannedRework>> PlanReworkAsync(ReadOnlyMemory<byte> log, Waiting waiting)
    {
        var planned = await AskAsync(nameof(Thinker.Rework), log, waiting);
        return planned.Succeeded ? JsonSerializer.Deserialize(planned.Value, PlannedReworkJson.Default.PlannedRework)! : planned.Problem!;
    }

    public async Task<Outcome<PlannedDay>> PlanDayAsync(ReadOnlyMemory<byte> log, DayAsk ask, Waiting waiting)
    {
        var said = await AskAsync(nameof(Thinker.Day), log, waiting, JsonSerializer.Serialize(ask, OrderedDayJson.Default.DayAsk));
        if (!said.Succeeded)
        {
            return said.Problem!;
        }

        var ordered = JsonSerializer.Deserialize(said.Value, OrderedDayJson.Default.OrderedDay)!;
        return ordered.Planned is { } planned ? planned : ordered.Problem!;
    }

    public async Task<Outcome<PlannedRepair>> PlanRepairAsync(ReadOnlyMemory<byte> log, string thing, Waiting waiting)
    {
        var planned = await AskAsync(nameof(Thinker.Repair), log, waiting, thing);
        return planned.Succeeded ? JsonSerializer.Deserialize(planned.Value, PlannedRepairJson.Default.PlannedRepair)! : planned.Problem!;
    }

    public async Task<Outcome<NamingAnswer>> NameAsync(ReadOnlyMemory<byte> log, NamingAsk ask, Waiting waiting)
    {
        var said = await AskAsync(nameof(Thinker.Name), log, waiting, JsonSerializer.Serialize(ask, NamedEndsJson.Default.NamingAsk));
        if (!said.Succeeded)
        {
            return said.Problem!;
        }

        var named = JsonSerializer.Deserialize(said.Value, NamedEndsJson.Default.NamedEnds)!;
        return named.Answer is { } answer ? answer : named.Problem!;
    }

    public async Task<Outcome<LocatedThing>> LocateAsync(ReadOnlyMemory<byte> log, LocateAsk ask, Waiting waiting)
    {
        var said = await AskAsync(nameof(Thinker.Locate), log, waiting, JsonSerializer.Serialize(ask, FoundPlacesJson.Default.LocateAsk));
        if (!said.Succeeded)
        {
            return said.Problem!;
        }

        var found = JsonSerializer.Deserialize(said.Value, FoundPlacesJson.Default.FoundPlaces)!;
        return found.Located is { } located ? located : found.Problem!;
    }

    /// <param name="about">What else the task has to know, as the worker reads it.</param>
    private async Task<Outcome<byte[]>> AskAsync(string task, ReadOnlyMemory<byte> log, Waiting waiting, string about = "")
    {
        await WorkerCalls.ReadyAsync();
        waiting.Cancellation.ThrowIfCancellationRequested();
        var number = ++asked;
        using var givingUp = waiting.Cancellation.Register(() => WorkerCalls.GiveUp(number));
        using var answer = await WorkerCalls.AskAsync(number, task, log.ToArray(), about, share => waiting.Progress?.Report(share));
        waiting.Cancellation.ThrowIfCancellationRequested();
        return answer.GetPropertyAsString("failed") is { } failed
            ? new Problem("working it out", $"stopped on an error of its own ({failed})", "Press \"Served log\", or open the log file again")
            : answer.GetPropertyAsByteArray("answer") ?? (Outcome<byte[]>)new Problem("working it out", "was given up for a newer note", "Begin it again once the newer note is worked out");
    }
}
