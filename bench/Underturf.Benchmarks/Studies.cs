namespace Underturf.Benchmarks;

/// <summary>The studies there are, by name. A new one is one line here and one file beside it.</summary>
internal static class Studies
{
    public static IReadOnlyList<Study> All { get; } =
    [
        new Study("worlds", "Is the true fault among the explanations, and do the stated probabilities hold?", Worlds.Run),
        new Study("diagnosis", "How good are the diagnosis and its moves? Parts: decisions, trial, said.", Diagnosis.Run),
        new Study("identify", "How many names of conductors are wrong, and how long does naming take?", Identify.Run),
        new Study("locate", "Does the ground that is told hold what is hidden, and what does searching cost?", Locate.Run),
        new Study("rework", "Does every valve run alone once its plan was carried out, or was it said to stay?", Rework.Run),
        new Study("sweep", "How long does a variant of a network take, beside a circuit simulator doing the same?", SweepSpeed.Run),
        new Study("half-wave", "How long does a period with half-wave devices take, beside a transient of a circuit simulator?", HalfWaveSpeed.Run),
        new Study("water", "How long does a pipe network take, beside an engine of waterworks, and all stations of a property? calibrate: does what is believed of the water hold, with each reading of a station taken once or several times?", WaterSpeed.Run),
        new Study("browser", "How long does an answer take in a browser?", (output, _) => Elsewhere(output, "browser")),
        new Study("app", "What does the page weigh, how soon can it be used, how quick is it with a long log?", (output, _) => Elsewhere(output, "app")),
        new Study("growth", "How do the time and memory of belief grow with the property?", BeliefGrowth.Run),
    ];

    /// <summary>It opens the page, and so is a program of its own that `./prove` calls.</summary>
    private static int Elsewhere(TextWriter output, string name)
    {
        output.WriteLine($"Run it with ./prove {name}");
        return 2;
    }
}
