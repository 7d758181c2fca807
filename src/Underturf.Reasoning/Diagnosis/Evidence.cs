using Underturf.FieldLog;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>A note that bears on what is wrong. It enters belief once, through <see cref="Weigh"/>.</summary>
internal abstract class Evidence(Moment moment, IReadOnlyList<string> stations)
{
    public Moment Moment { get; } = moment;

    public EntryId Entry => Moment.Entry;

    /// <summary>The stations whose wires it is about.</summary>
    public IReadOnlyList<string> Stations { get; } = stations;

    /// <summary>How it was taken and of what, in words.</summary>
    public required string What { get; init; }

    /// <summary>What was seen, in words.</summary>
    public required string Observed { get; init; }

    /// <summary>False for notes that a slip of the pen or eye does not concern.</summary>
    public virtual bool CanBeMisread => true;

    /// <summary>
    /// Adds, for every level of the usual coil, the logarithm of the chance to note just this when the suspects, and nothing else, are wrong.
    /// </summary>
    public void Weigh(IReadOnlyList<Suspect> suspects, CoilLevels levels, Cures cures, double[] into)
    {
        var active = suspects.Where(s => s.Fault is not null && !cures.IsCured(s, Moment)).ToList();
        if (active.Any(s => s.Note == Entry || (s.Fault!.Scope == Property.Practice.FaultScope.Unmodelled && Stations.Contains(s.Station!))))
        {
            Add(LogChanceUnmodelled, into);
            return;
        }

        WeighActive(active, levels, into);
    }

    /// <summary>What the suspects predict, in words, at one level of the usual coil.</summary>
    public string Predicted(IReadOnlyList<Suspect> suspects, double logLevel, Cures cures)
    {
        var active = suspects.Where(s => s.Fault is not null && !cures.IsCured(s, Moment)).ToList();
        return active.Any(s => s.Note == Entry || s.Fault!.Scope == Property.Practice.FaultScope.Unmodelled)
            ? "anything"
            : PredictedActive(active, logLevel);
    }

    /// <summary>How unlikely the note is with nothing broken, against an ordinary one, in powers of ten.</summary>
    public abstract double Surprise(double logLevel);

    protected abstract double LogChanceUnmodelled { get; }

    protected abstract void WeighActive(IReadOnlyList<Suspect> active, CoilLevels levels, double[] into);

    protected abstract string PredictedActive(IReadOnlyList<Suspect> active, double logLevel);

    protected static void Add(double logChance, double[] into)
    {
        for (var i = 0; i < into.Length; i++)
        {
            into[i] += logChance;
        }
    }
}
