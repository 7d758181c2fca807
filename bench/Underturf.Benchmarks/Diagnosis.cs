namespace Underturf.Benchmarks;

/// <summary>The proof of the diagnosis, part by part.</summary>
internal static class Diagnosis
{
    private static readonly Dictionary<string, Func<TextWriter, IReadOnlyList<string>, int>> Parts = new(StringComparer.Ordinal)
    {
        ["trial"] = Trials.Run,
    };

    public static int Run(TextWriter output, IReadOnlyList<string> arguments)
    {
        if (arguments.Count > 0 && Parts.TryGetValue(arguments[0], out var part))
        {
            return part(output, [.. arguments.Skip(1)]);
        }

        Console.Error.WriteLine($"prove: name a part of the diagnosis: {string.Join(", ", Parts.Keys)}.");
        return 2;
    }
}
