using Underturf.FieldLog;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>A note that bears on what is wrong. It enters belief once, through <see cref="LogChance"/>.</summary>
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

    /// <summary>Whether it was taken in the same way, of the same thing, at the same place.</summary>
    public virtual bool IsOfTheSame(Evidence other) => GetType() == other.GetType() && Stations.SequenceEqual(other.Stations);

    /// <summary>Logarithm of the chance to note just this when the suspects, and nothing else, are wrong.</summary>
    public double LogChance(IReadOnlyList<Suspect> suspects, Outlook outlook, Cures cures)
    {
        var active = Active(suspects, cures);
        foreach (var suspect in active)
        {
            if (IsAnything(suspect))
            {
                return LogChanceUnmodelled;
            }
        }

        return LogChanceActive(active, outlook);
    }

    /// <summary>
    /// Where what is predicted moves one way only as a suspect's amount grows: below (-1) or above (1) what was noted, so that amounts between two on one
    /// side lie on that side too; 0 where that is not known. Resistance is monotone in every resistance (Rayleigh; exact).
    /// </summary>
    public virtual int Side(IReadOnlyList<Suspect> suspects, Outlook outlook, Cures cures) => 0;

    /// <summary>What the suspects predict, in words.</summary>
    public string Predicted(IReadOnlyList<Suspect> suspects, Outlook outlook, Cures cures)
    {
        var active = Active(suspects, cures);
        return active.Any(IsAnything) ? "anything" : PredictedActive(active, outlook);
    }

    /// <summary>How unlikely the note is with nothing broken, against an ordinary one, in powers of ten.</summary>
    public abstract double Surprise(Outlook outlook);

    /// <summary>Chance that the same would be noted again, were only the suspects wrong.</summary>
    public abstract double ChanceToRepeat(IReadOnlyList<Suspect> active, Outlook outlook);

    protected abstract double LogChanceUnmodelled { get; }

    protected abstract double LogChanceActive(IReadOnlyList<Suspect> active, Outlook outlook);

    protected abstract string PredictedActive(IReadOnlyList<Suspect> active, Outlook outlook);

    protected bool IsAnything(Suspect suspect) =>
        suspect.Note == Entry || (suspect.Fault!.Scope == Property.Practice.FaultScope.Unmodelled && Stations.Contains(suspect.Station!));

    /// <summary>Those wrong at the time of the note; as a rule all.</summary>
    protected IReadOnlyList<Suspect> Active(IReadOnlyList<Suspect> suspects, Cures cures)
    {
        foreach (var suspect in suspects)
        {
            if (suspect.Fault is null || cures.IsCured(suspect, Moment))
            {
                return [.. suspects.Where(s => s.Fault is not null && !cures.IsCured(s, Moment))];
            }
        }

        return suspects;
    }
}
