namespace Underturf.Benchmarks;

/// <summary>How good the diagnosis and its moves are; made of parts that can be run apart.</summary>
internal static class Diagnosis
{
    public static IReadOnlyList<Study> Parts { get; } =
    [
        new Study("decisions", "How near do the moves come to the exact optimum, beside rules of thumb?", Decisions.Run),
        new Study("trial", "Do the moves cost less than rules of thumb in whole trials, and does what is said of a fault hold?", Trials.Run),
        new Study("said", "Does what the notebook says of a fault hold when it acts on it?", Trials.Said),
    ];

    public static int Run(TextWriter output, IReadOnlyList<string> arguments)
    {
        var wanted = arguments.Count == 0 ? Parts : [.. Parts.Where(part => part.Name == arguments[0])];
        if (wanted.Count == 0)
        {
            Console.Error.WriteLine($"prove: diagnosis has no part \"{arguments[0]}\"; it has {string.Join(", ", Parts.Select(part => part.Name))}.");
            return 2;
        }

        foreach (var part in wanted)
        {
            output.WriteLine($"## {part.Question}");
            output.WriteLine();
            if (part.Run(output, [.. arguments.Skip(1)]) is var code and not 0)
            {
                return code;
            }
        }

        return 0;
    }
}
