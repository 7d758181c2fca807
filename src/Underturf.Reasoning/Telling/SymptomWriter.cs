using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Telling;

/// <summary>Says what was seen that calls for an explanation.</summary>
internal sealed class SymptomWriter(Case owner)
{
    public string Of(Subject subject, IReadOnlyList<Evidence> evidence)
    {
        var names = subject.Stations.Count == 1
            ? owner.View.Name(subject.Stations[0])
            : $"stations {string.Join(", ", subject.Stations.Select(owner.View.StationNumber))} together";
        var odd = evidence
            .Where(e => IsOdd(e, subject))
            .GroupBy(e => e.What.Split(',')[0])
            .Select(g => Said([.. g], subject.Outlook))
            .ToList();
        return odd.Count == 0 ? $"{names}: asked" : $"{names}: {string.Join("; ", odd)}";
    }

    /// <summary>Notes taken in one way, in one breath: "station ohms over range (7 times), 33.3 ± 1.1 ohm expected".</summary>
    private string Said(IReadOnlyList<Evidence> same, Outlook outlook)
    {
        var seen = same.Select(e => e.Observed).Distinct().ToList();
        var observed = seen.Count == 1 ? seen[0] + (same.Count > 1 ? $" ({same.Count} times)" : string.Empty) : $"{seen[0]} to {seen[^1]}";
        return same[0] is RunEvidence ? $"run: {string.Join("; ", seen)}"
            : same[0] is LookEvidence ? $"{same[0].What}: {string.Join("; ", seen)}"
            : $"{same[0].What.Split(',')[0]} {observed}, {same[0].Predicted([], outlook, owner.Cures)} expected";
    }

    /// <summary>It shows by itself that something is wrong, or is much likelier in the leading unsound world than if all were sound.</summary>
    private bool IsOdd(Evidence evidence, Subject subject)
    {
        if (evidence is LookEvidence look)
        {
            return look.ShowsFault;
        }

        var leading = subject.Worlds.FirstOrDefault(w => !w.IsSound);
        return (evidence is RunEvidence run && (run.Behaved is { } b && b != Behaviour.Opens || run.Places > 1 || run.AtOwnPlace == false))
            || (leading is not null && evidence.LogChance(leading.Suspects, subject.Outlook, owner.Cures) - evidence.LogChance([], subject.Outlook, owner.Cures) > 2);
    }
}
