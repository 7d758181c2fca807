using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Telling;

/// <summary>For an explanation, each note beside what it predicts and how strongly the note speaks for or against it.</summary>
internal sealed class EvidenceTable(Case owner, Subject subject, IReadOnlyList<WorldGroup> groups)
{
    private const int MostWorlds = 12;

    public IReadOnlyList<EvidenceLine> Lines(WorldGroup group, IReadOnlyList<Evidence> evidence) => [.. evidence.Select(e => new EvidenceLine(
        e.Entry.ToString(),
        e.What,
        e.Predicted(group.Worlds[0].Suspects, subject.Outlook, owner.Cures),
        e.Observed,
        Weight(group, e)))];

    private double Weight(WorldGroup group, Evidence evidence)
    {
        var others = groups.Where(g => g != group).ToList();
        if (others.Count == 0)
        {
            return 0;
        }

        var (own, rest) = (Chance([group], evidence), Chance(others, evidence));
        return Math.Clamp(Math.Log10(Math.Max(own, 1e-30) / Math.Max(rest, 1e-30)), -9, 9);
    }

    private double Chance(IReadOnlyList<WorldGroup> some, Evidence evidence)
    {
        var worlds = some.SelectMany(g => g.Worlds).OrderByDescending(w => w.Probability).Take(MostWorlds).ToList();
        var total = worlds.Sum(w => w.Probability);
        return worlds.Sum(w => w.Probability / total * Math.Exp(evidence.LogChance(w.Suspects, subject.Outlook, owner.Cures)));
    }
}
