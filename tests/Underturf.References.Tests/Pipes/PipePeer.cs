using System.Diagnostics;
using System.Text.Json;

namespace Underturf.References.Tests.Pipes;

/// <summary>What the reference engine answers, in metres and cubic metres a second.</summary>
/// <param name="HeadMetres">By the node's number.</param>
/// <param name="FlowCubicMetresPerSecond">By the element's number.</param>
/// <param name="OutflowCubicMetresPerSecond">By the node's number: withdrawn, and from its outlets.</param>
/// <param name="Milliseconds">All of solving once, and the solving without making ready, a pair for each repeat.</param>
internal sealed record PeerAnswer(
    IReadOnlyDictionary<int, double> HeadMetres,
    IReadOnlyDictionary<int, double> FlowCubicMetresPerSecond,
    IReadOnlyDictionary<int, double> OutflowCubicMetresPerSecond,
    int Rounds,
    IReadOnlyList<(double All, double Solving)> Milliseconds);

/// <summary>Asks the engine in peer/, one process for a list of networks; a complaint, or the missing engine, throws.</summary>
internal static class PipePeer
{
    /// <summary>The engine's cubic foot and foot.</summary>
    internal const double CubicMetresPerCubicFoot = 0.3048 * 0.3048 * 0.3048;
    internal const double MetresPerFoot = 0.3048;

    internal static IReadOnlyList<PeerAnswer> Solve(IEnumerable<string> inputs, int repeats = 1)
    {
        var folder = Directory.CreateTempSubdirectory("underturf-peer-");
        try
        {
            var (question, answer) = (Path.Combine(folder.FullName, "in.json"), Path.Combine(folder.FullName, "out.json"));
            File.WriteAllText(question, JsonSerializer.Serialize(inputs.Select(inp => new { inp, repeats })));
            Run([Path.Combine(Checkout(), "peer", "solve-pipes.mjs"), question, answer]);
            using var read = JsonDocument.Parse(File.ReadAllText(answer));
            return [.. read.RootElement.EnumerateArray().Select(Read)];
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void Run(string[] arguments)
    {
        var start = new ProcessStartInfo("node", arguments) { UseShellExecute = false, RedirectStandardError = true, RedirectStandardOutput = true };
        using var process = Process.Start(start)!;
        var words = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"The reference engine failed:\n{errors}{words.GetAwaiter().GetResult()}");
        }
    }

    private static PeerAnswer Read(JsonElement answer) => new(
        Numbers(answer.GetProperty("heads"), MetresPerFoot),
        Numbers(answer.GetProperty("flows"), CubicMetresPerCubicFoot),
        Numbers(answer.GetProperty("demands"), CubicMetresPerCubicFoot),
        answer.GetProperty("rounds").GetInt32(),
        [.. answer.GetProperty("times").EnumerateArray().Select(t => (t.GetProperty("all").GetDouble(), t.GetProperty("solving").GetDouble()))]);

    private static Dictionary<int, double> Numbers(JsonElement values, double factor) =>
        values.EnumerateObject().ToDictionary(v => int.Parse(v.Name.AsSpan(1), System.Globalization.CultureInfo.InvariantCulture), v => v.Value.GetDouble() * factor);

    private static string Checkout()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Underturf.slnx")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("The tests run outside a checkout: no Underturf.slnx above them.");
        }

        return folder.FullName;
    }
}
