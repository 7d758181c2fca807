using System.ComponentModel;
using System.Diagnostics;
using Underturf.Quantities;

namespace Underturf.Simulation.SecondEngine;

/// <summary>
/// One run of the circuit simulator of the Debian package <c>ngspice</c>. It ends with code 0 on a singular matrix and on a bad netlist, so
/// its words are read.
/// </summary>
internal static class NgspiceProcess
{
    private static readonly string[] Complaints = ["error", "singular", "warning", "no such vector", "unknown", "gmin", "source stepping"];

    /// <summary>Runs a deck in a folder of its own.</summary>
    /// <param name="read">Reads the folder and what was printed, before the folder goes.</param>
    /// <returns>What was read, or what the engine complains of.</returns>
    internal static Outcome<T> Run<T>(string deck, Func<string, string, Outcome<T>> read)
    {
        var folder = Directory.CreateTempSubdirectory("underturf-ngspice-");
        try
        {
            File.WriteAllText(Path.Combine(folder.FullName, "deck.cir"), deck);
            var words = Words(folder.FullName);
            return words.Succeeded ? read(folder.FullName, words.Value) : words.Problem!;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static Outcome<string> Words(string folder)
    {
        var start = new ProcessStartInfo("ngspice", ["-b", "deck.cir"]) { WorkingDirectory = folder, UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        try
        {
            using var process = Process.Start(start)!;
            var errors = process.StandardError.ReadToEndAsync();
            var words = process.StandardOutput.ReadToEnd() + errors.GetAwaiter().GetResult();
            process.WaitForExit();
            var complaint = Array.Find(Complaints, c => words.Contains(c, StringComparison.OrdinalIgnoreCase));
            return process.ExitCode == 0 && complaint is null
                ? words
                : new Problem("deck", $"ngspice complains ('{complaint}', exit code {process.ExitCode}):\n{words}", "Look at the deck it was given");
        }
        catch (Win32Exception)
        {
            return new Problem("ngspice", "is missing", "Install the Debian package 'ngspice'");
        }
    }
}
