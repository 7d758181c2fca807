namespace Underturf.Architecture;

/// <summary>Which room may know which: the design's table for the rooms that exist.</summary>
internal static class Arrows
{
    /// <summary>The rooms that run in the browser too: no console, network, process or host in them.</summary>
    public static IReadOnlyList<string> Core { get; } =
    [
        "Underturf.Quantities", "Underturf.Numerics", "Underturf.FieldLog", "Underturf.Property", "Underturf.Practice", "Underturf.Answers", "Underturf.Networks",
        "Underturf.Reasoning", "Underturf.Planning", "Underturf.Papers", "Underturf.Simulation", "Underturf.FieldApp",
    ];

    /// <summary>
    /// Room to the rooms it may name in its project file. FieldApp stands on Planning until Exchange exists; until then what thinks for the page
    /// names Papers itself, which FieldApp will reach by Exchange. Simulation carries out plans, so it knows Planning.
    /// </summary>
    public static IReadOnlyDictionary<string, string[]> Direct { get; } = new Dictionary<string, string[]>
    {
        ["Underturf.Quantities"] = [],
        ["Underturf.Numerics"] = [],
        ["Underturf.FieldLog"] = ["Underturf.Quantities"],
        ["Underturf.Property"] = ["Underturf.FieldLog"],
        ["Underturf.Practice"] = ["Underturf.Property"],
        ["Underturf.Answers"] = ["Underturf.Property"],
        ["Underturf.Networks"] = ["Underturf.Quantities", "Underturf.Numerics"],
        ["Underturf.Reasoning"] = ["Underturf.Practice", "Underturf.Answers", "Underturf.Networks"],
        ["Underturf.Planning"] = ["Underturf.Reasoning"],
        ["Underturf.Planning.Solver"] = ["Underturf.Planning"],
        ["Underturf.Papers"] = ["Underturf.Planning"],
        ["Underturf.Simulation"] = ["Underturf.Planning"],
        ["Underturf.Simulation.SecondEngine"] = ["Underturf.Simulation"],
        ["Underturf.FieldApp"] = ["Underturf.Planning"],
        ["Underturf.FieldApp.Thinking"] = ["Underturf.FieldApp", "Underturf.Papers"],
        ["Underturf.FieldApp.Browser"] = ["Underturf.FieldApp", "Underturf.FieldApp.Thinking"],
        ["Underturf.Server"] = ["Underturf.FieldLog", "Underturf.FieldApp.Browser"],
        ["Underturf.Cli"] = ["Underturf.Papers", "Underturf.Planning", "Underturf.Simulation", "Underturf.Simulation.SecondEngine", "Underturf.Server"],
    };

    /// <summary>What a room may use: everything that its arrows lead to, at any distance.</summary>
    public static IReadOnlySet<string> Reach(string room)
    {
        var reached = new HashSet<string>();
        var open = new Stack<string>(Direct[room]);
        while (open.TryPop(out var next))
        {
            if (reached.Add(next))
            {
                foreach (var further in Direct[next])
                {
                    open.Push(further);
                }
            }
        }

        return reached;
    }
}
