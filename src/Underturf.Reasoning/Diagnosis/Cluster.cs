namespace Underturf.Reasoning.Diagnosis;

/// <summary>Stations tied together by readings between them; most stand alone.</summary>
internal sealed class Cluster
{
    public required IReadOnlyList<StationNotes> Stations { get; init; }

    /// <summary>Readings between its stations.</summary>
    public required IReadOnlyList<Evidence> Ties { get; init; }

    /// <summary>log of the chance that nothing is wrong.</summary>
    public double LogNone => Stations.Sum(s => s.LogNone);

    public IReadOnlyList<Evidence> Evidence => field ??= [.. Stations.SelectMany(s => s.Evidence), .. Ties];

    /// <summary>Notes that may be wrong, by their numbers in the evidence, and the suspect that says so of each.</summary>
    public IReadOnlyList<(int Note, Suspect Wrong)> Doubtful => field ??= [..
        from station in Stations
        from family in station.Families
        where family[0].Note is not null
        select (Evidence.Index().First(e => e.Item.Entry == family[0].Note).Index, family[0])];

    /// <summary>Whether its one station may or may not return by the place of one of the faults; of several read against each other all do.</summary>
    public bool MayReturnBy(Suspect[] faults) => Stations is [var only] && Array.Exists(faults, f => only.Path.MayReturnBy(f));

    public bool Has(string? station) => station is not null && Stations.Any(s => s.Path.Station == station);
}

/// <summary>What could be wrong with one station alone, and the notes that bear on it.</summary>
/// <param name="evidence">The quickest to weigh first.</param>
/// <param name="families">Each thing that could be wrong, "all sound" not among them.</param>
internal sealed class StationNotes(Translation.StationPath path, IReadOnlyList<Evidence> evidence, IReadOnlyList<SuspectFamily> families)
{
    public Translation.StationPath Path { get; } = path;

    public IReadOnlyList<Evidence> Evidence { get; } = evidence;

    public IReadOnlyList<SuspectFamily> Families { get; } = families;

    /// <summary>log of the chance that none of them is wrong.</summary>
    public double LogNone { get; } = families.Sum(f => f.LogNone);

    /// <summary>A bound of the logarithm of the chance of the notes from each one on, whatever is wrong; 0 behind the last.</summary>
    public IReadOnlyList<double> LogCeilings { get; } = [.. Enumerable.Range(0, evidence.Count + 1).Select(i => evidence.Skip(i).Sum(e => e.LogCeiling))];

    /// <summary>The same station by some of its notes.</summary>
    public StationNotes By(Func<Evidence, bool> some) => new(Path, [.. Evidence.Where(some)], Families);
}

/// <summary>Things wrong together in a cluster, and the logarithm of their chance with the cluster's notes.</summary>
internal sealed record State(Suspect[] Suspects, double LogPrior, double LogWeight)
{
    public bool IsSound => Suspects.Length == 0;

    /// <summary>Beside a fault of a common in a box that nobody has found: the station ends before that box.</summary>
    public bool IsBefore { get; init; }

    /// <summary>What is wrong in the state beside what is wrong with what stations share.</summary>
    public Suspect[] With(Suspect[] shared) => Together(Suspects, IsBefore ? [.. shared.Where(s => s.Seat.Beyond is null)] : shared);

    /// <summary>Both at once; one of them itself where the other is empty, as it mostly is.</summary>
    public static Suspect[] Together(Suspect[] own, Suspect[] shared) => shared.Length == 0 ? own : own.Length == 0 ? shared : [.. own, .. shared];
}

/// <summary>The states of a cluster that are worth keeping, likeliest first.</summary>
/// <param name="LogTotal">log of the chance of the cluster's notes.</param>
/// <param name="LogLeftOut">A bound of the logarithm of what the states left out would add.</param>
internal sealed record States(IReadOnlyList<State> All, double LogTotal, double LogLeftOut)
{
    /// <summary>Probability that nothing is to be mended.</summary>
    public double AsksNothing => All.Where(s => Array.TrueForAll(s.Suspects, x => x.Fault.AsksNothing)).Sum(s => Math.Exp(s.LogWeight - LogTotal));

    public static States Of(List<State> all, double logLeftOut)
    {
        all.Sort((a, b) => b.LogWeight.CompareTo(a.LogWeight));
        return new States(all, Numerics.LogMath.LogSumExp([.. all.Select(s => s.LogWeight)]), logLeftOut);
    }
}
