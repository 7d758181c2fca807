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
}
