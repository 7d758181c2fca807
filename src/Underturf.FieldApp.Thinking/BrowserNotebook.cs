using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Underturf.Planning.Day;
using Underturf.Planning.Repair;
using Underturf.Planning.Rework;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Water;

namespace Underturf.FieldApp.Thinking;

/// <summary>The core, run in a worker of the browser.</summary>
public sealed class BrowserNotebook : INotebook
{
    private static readonly TravelJson forms = TravelJson.Default;

    private int asked;

    public Task<Outcome<OpenedLog>> OpenAsync(ReadOnlyMemory<byte> log, Waiting waiting) => AskAsync(nameof(Thinker.Answer), log, waiting, forms.OpenedLog);

    public async Task<Outcome<IReadOnlyList<MadePaper>>> MakePapersAsync(ReadOnlyMemory<byte> log, Waiting waiting)
    {
        var made = await AskAsync(nameof(Thinker.Papers), log, waiting, forms.MadePaperArray);
        return made.Succeeded ? made.Value : made.Problem!;
    }

    public Task<Outcome<Planned<ReworkAnswer>>> PlanReworkAsync(ReadOnlyMemory<byte> log, Waiting waiting) => AskAsync(nameof(Thinker.Rework), log, waiting, forms.PlannedReworkAnswer);

    public Task<Outcome<FlowLines>> FlowAsync(ReadOnlyMemory<byte> log, Waiting waiting) => AskAsync(nameof(Thinker.Flow), log, waiting, forms.FlowLines);

    public Task<Outcome<PlannedDay>> PlanDayAsync(ReadOnlyMemory<byte> log, DayAsk ask, Waiting waiting) =>
        AskAsync(nameof(Thinker.Day), log, waiting, forms.PlannedDay, JsonSerializer.Serialize(ask, forms.DayAsk));

    public Task<Outcome<Planned<RepairAnswer>>> PlanRepairAsync(ReadOnlyMemory<byte> log, string thing, Waiting waiting) =>
        AskAsync(nameof(Thinker.Repair), log, waiting, forms.PlannedRepairAnswer, thing);

    public Task<Outcome<NamingAnswer>> NameAsync(ReadOnlyMemory<byte> log, NamingAsk ask, Waiting waiting) =>
        AskAsync(nameof(Thinker.Name), log, waiting, forms.NamingAnswer, JsonSerializer.Serialize(ask, forms.NamingAsk));

    public Task<Outcome<LocatedThing>> LocateAsync(ReadOnlyMemory<byte> log, LocateAsk ask, Waiting waiting) =>
        AskAsync(nameof(Thinker.Locate), log, waiting, forms.LocatedThing, JsonSerializer.Serialize(ask, forms.LocateAsk));

    /// <param name="about">What else the task has to know, as the worker reads it.</param>
    private async Task<Outcome<T>> AskAsync<T>(string task, ReadOnlyMemory<byte> log, Waiting waiting, JsonTypeInfo<T> form, string about = "")
    {
        await WorkerCalls.ReadyAsync();
        waiting.Cancellation.ThrowIfCancellationRequested();
        var number = ++asked;
        using var givingUp = waiting.Cancellation.Register(() => WorkerCalls.GiveUp(number));
        using var answer = await WorkerCalls.AskAsync(number, task, log.ToArray(), about, share => waiting.Progress?.Report(share));
        waiting.Cancellation.ThrowIfCancellationRequested();
        return answer.GetPropertyAsString("failed") is { } failed ? new Problem("working it out", $"stopped on an error of its own ({failed})", "Press \"Served log\", or open the log file again")
            : answer.GetPropertyAsByteArray("answer") is { } bytes ? Travel.Read(bytes, form)
            : new Problem("working it out", "was given up for a newer note", "Begin it again once the newer note is worked out");
    }
}
