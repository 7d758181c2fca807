using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text;
using System.Text.Json;
using Underturf.Standby;

namespace Underturf.Tests.Cli;

/// <summary>A process that runs the command line order after order. It ends when this one does, as its input is closed then.</summary>
internal sealed class StandbyProgram
{
    private static readonly ConcurrentBag<StandbyProgram> Idle = [];

    private readonly Process process = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "Underturf.Standby.dll")])
    {
        UseShellExecute = false,
        RedirectStandardInput = true,
        RedirectStandardOutput = true,
        StandardInputEncoding = new UTF8Encoding(false),
        StandardOutputEncoding = Encoding.UTF8,
    })!;

    /// <summary>By a process that stands by, or by a new one where all are at work.</summary>
    public static Result Run(Order order)
    {
        var program = Idle.TryTake(out var idle) ? idle : new StandbyProgram();
        program.process.StandardInput.WriteLine(JsonSerializer.Serialize(order));
        program.process.StandardInput.Flush();
        var answer = program.process.StandardOutput.ReadLine() ?? throw new InvalidOperationException($"it ended while it ran: {string.Join(' ', order.Arguments)}");
        Idle.Add(program);
        return JsonSerializer.Deserialize<Result>(answer)!;
    }
}
