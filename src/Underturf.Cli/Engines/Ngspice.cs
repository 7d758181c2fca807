using System.ComponentModel;
using System.Diagnostics;
using Underturf.Quantities;

namespace Underturf.Cli.Engines;

/// <summary>Runs the circuit simulator of the Debian package <c>ngspice</c> in batch and gives back what it prints.</summary>
internal static class Ngspice
{
    /// <summary>It ends with code 0 on a singular matrix and on a bad netlist, so its words are read.</summary>
    private static readonly string[] Complaints = ["error", "singular", "warning", "no such vector", "unknown", "gmin", "source stepping"];

    public static Outcome<string> Run(string deck)
    {
        var folder = Directory.CreateTempSubdirectory("underturf-ngspice-");
        try
        {
            File.WriteAllText(Path.Combine(folder.FullName, "deck.cir"), deck);
            return Words(folder.FullName);
        }
        catch (Win32Exception)
        {
            return new Problem("ngspice", "is not installed", "Install the Debian package 'ngspice'");
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static Outcome<string> Words(string folder)
    {
        var start = new ProcessStartInfo("ngspice", ["-b", "deck.cir"]) { WorkingDirectory = folder, UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var words = process.StandardOutput.ReadToEnd() + errors.GetAwaiter().GetResult();
        process.WaitForExit();
        var complaint = Array.Find(Complaints, c => words.Contains(c, StringComparison.OrdinalIgnoreCase));
        return process.ExitCode == 0 && complaint is null
            ? words
            : new Problem("ngspice", $"ends with code {process.ExitCode} and complains ('{complaint}')", "Look at the deck it was given");
    }
}
