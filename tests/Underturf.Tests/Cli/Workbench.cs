using System.Diagnostics;
using System.Text;
using Underturf.FieldLog;
using Underturf.Standby;
using Underturf.Tests.Reasoning;

namespace Underturf.Tests.Cli;

/// <summary>A folder of its own, and the built program run in it.</summary>
internal sealed class Workbench : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("underturf-test-");

    /// <summary>Six stations, one open, nothing wrong with the log.</summary>
    public static LogDocument Sound { get; } = Site.Line().Sweep(60, (3, "over range")).Log();

    public static string[] Lines { get; } = Encoding.UTF8.GetString(Sound.ToBytes().Span).Split('\n', StringSplitOptions.RemoveEmptyEntries);

    public string Path(string name) => System.IO.Path.Combine(folder.FullName, name);

    public string Write(string name, params IEnumerable<string> lines) => Write(name, Encoding.UTF8.GetBytes(string.Concat(lines.Select(l => l + "\n"))));

    public string Write(string name, byte[] bytes)
    {
        File.WriteAllBytes(Path(name), bytes);
        return name;
    }

    public byte[] Read(string name) => File.ReadAllBytes(Path(name));

    public string[] Names() => [.. folder.EnumerateFileSystemInfos().Select(f => f.Name).Order(StringComparer.Ordinal)];

    /// <summary>Runs in a process that has run others before.</summary>
    public Ran Run(params string[] arguments)
    {
        var result = StandbyProgram.Run(new Order(folder.FullName, arguments));
        return new Ran(result.Code, result.Out, result.Error);
    }

    /// <summary>Runs in a process of its own, as its user would.</summary>
    public Ran RunApart(params string[] arguments) => Type(null, arguments);

    /// <summary>Runs where no other program is to be found.</summary>
    public Ran RunAlone(params string[] arguments) => Type(null, arguments, path: string.Empty);

    /// <summary>What stands on the screen of somebody who runs it: both streams as they come.</summary>
    public string Both(params string[] arguments)
    {
        var start = new ProcessStartInfo("sh", ["-c", "exec dotnet \"$0\" \"$@\" 2>&1", System.IO.Path.Combine(AppContext.BaseDirectory, "underturf.dll"), .. arguments])
        {
            UseShellExecute = false,
            WorkingDirectory = folder.FullName,
            RedirectStandardOutput = true,
            StandardOutputEncoding = Encoding.UTF8,
        };
        using var process = Process.Start(start)!;
        return process.StandardOutput.ReadToEnd();
    }

    /// <summary>Runs with something typed on standard input.</summary>
    public Ran Type(byte[]? input, params string[] arguments) => Type(input, arguments, Environment.GetEnvironmentVariable("PATH"));

    private Ran Type(byte[]? input, string[] arguments, string? path)
    {
        var start = new ProcessStartInfo("dotnet", [System.IO.Path.Combine(AppContext.BaseDirectory, "underturf.dll"), .. arguments])
        {
            UseShellExecute = false,
            WorkingDirectory = folder.FullName,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        start.Environment["PATH"] = path;
        using var process = Process.Start(start)!;
        var (said, complained) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        process.StandardInput.BaseStream.Write(input ?? []);
        process.StandardInput.Close();
        process.WaitForExit();
        return new Ran(process.ExitCode, said.Result, complained.Result);
    }

    public void Dispose() => folder.Delete(recursive: true);
}
