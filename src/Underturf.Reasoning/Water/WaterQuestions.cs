using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Moves;

namespace Underturf.Reasoning.Water;

/// <summary>The open questions about water, those of the whole property first.</summary>
internal static class WaterQuestions
{
    public static IReadOnlyList<OpenQuestion> Of(WaterBelief belief, Walks walks) =>
    [
        .. new[] { new LeakQuestion(belief, walks).Write(), new SupplyQuestion(belief).Write() }
            .Concat(belief.Stations.Select((_, index) => new StationQuestion(belief, walks, index).Write()))
            .OfType<OpenQuestion>(),
    ];

    /// <summary>What the wiring makes of each station that is asked about: how many valves open together, and whether any does.</summary>
    public static Dictionary<string, IReadOnlyList<WiringState>> Wiring(Case matter, IEnumerable<Subject> subjects) =>
        subjects.Where(s => s.Stations.Count == 1).ToDictionary(s => s.Stations[0], s => Wiring(matter, s), StringComparer.Ordinal);

    private static IReadOnlyList<WiringState> Wiring(Case matter, Subject subject)
    {
        var run = RunEvidence.Asked(subject.Stations[0], matter);
        var worlds = subject.Worlds.Select(w => (Valves: 1 + w.Suspects.Sum(s => s.MoreCoils + (s.Fault!.Joins ? 1 : 0)), w.Probability, Shut: run.BehaviourChances([.. w.Suspects], subject.Outlook)[(int)Behaviour.StaysShut])).ToList();
        return
        [
            .. worlds.GroupBy(w => w.Valves).Select(g => new WiringState(g.Key, StaysShut: false, g.Sum(w => w.Probability * (1 - w.Shut)))).OrderBy(s => s.Valves),
            new WiringState(1, StaysShut: true, worlds.Sum(w => w.Probability * w.Shut)),
        ];
    }
}
