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
    /// <param name="before">Readings of the same state taken in before; this one is added. Nothing to weigh it by itself.</param>
    public double LogChance(Suspect[] suspects, Outlook outlook, Cures cures, JointReadings? before = null)
    {
        var active = Active(suspects, cures);
        return IsMisnoted(active) ? LogChanceMisnoted : IsAnything(active) ? LogChanceUnmodelled : LogChanceActive(active, outlook, before);
    }

    /// <summary>log of the chance to note just this when the note is wrong.</summary>
    public double LogChanceIfWrong => CanBeMisread ? LogChanceMisnoted : double.NegativeInfinity;

    /// <summary>A bound of the logarithm of its chance, whatever is wrong.</summary>
    public virtual double LogCeiling => 0;

    /// <summary>
    /// Where what is predicted moves one way only as a suspect's amount grows: below (-1) or above (1) what was noted, so that amounts between two on one
    /// side lie on that side too; 0 where that is not known. Resistance is monotone in every resistance (Rayleigh; exact).
    /// </summary>
    /// <param name="before">Readings of the same state, this one the last of them.</param>
    public virtual int Side(Suspect[] suspects, Outlook outlook, Cures cures, JointReadings? before = null) => 0;

    /// <summary>What the suspects predict, in words.</summary>
    public string Predicted(Suspect[] suspects, Outlook outlook, Cures cures)
    {
        var active = Active(suspects, cures);
        return AllowAnything(active) ? "anything" : PredictedActive(active, outlook);
    }

    /// <summary>How unlikely the note is with nothing broken, against an ordinary one, in powers of ten.</summary>
    public abstract double Surprise(Outlook outlook);

    /// <summary>Chance that the same would be noted again, were only the suspects wrong.</summary>
    public abstract double ChanceToRepeat(Suspect[] active, Outlook outlook);

    protected abstract double LogChanceUnmodelled { get; }

    /// <summary>The same of a note that is wrong.</summary>
    protected virtual double LogChanceMisnoted => LogChanceUnmodelled;

    protected abstract double LogChanceActive(Suspect[] active, Outlook outlook, JointReadings? before);

    protected abstract string PredictedActive(Suspect[] active, Outlook outlook);

    private bool IsMisnoted(Suspect[] active)
    {
        foreach (var suspect in active)
        {
            if (suspect.Note is { } note && note == Entry)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether something not modelled is wrong.</summary>
    private bool IsAnything(Suspect[] active)
    {
        foreach (var suspect in active)
        {
            if (suspect.Fault.Scope == Property.Practice.FaultScope.Unmodelled && Stations.Contains(suspect.Station!))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether one of them leaves room for anything: the note is wrong, or something not modelled is.</summary>
    protected bool AllowAnything(Suspect[] active) => IsMisnoted(active) || IsAnything(active);

    /// <summary>Those wrong at the time of the note; as a rule all.</summary>
    protected Suspect[] Active(Suspect[] suspects, Cures cures)
    {
        if (!cures.HasAny)
        {
            return suspects;
        }

        foreach (var suspect in suspects)
        {
            if (!IsActive(suspect, cures))
            {
                return Uncured(suspects, cures);
            }
        }

        return suspects;
    }

    /// <summary>By itself, so that nothing is allocated where all are active.</summary>
    private Suspect[] Uncured(Suspect[] suspects, Cures cures) => [.. suspects.Where(s => IsActive(s, cures))];

    private bool IsActive(Suspect suspect, Cures cures) => !cures.IsCured(suspect, Moment);
}
