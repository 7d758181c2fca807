using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>The steps of rebuilding a box, in their order.</summary>
public enum RebuildStep
{
    Clear,
    Photograph,
    Tag,
    Free,
    Remake,
    Retest,
    House,
}

/// <summary>How far the rebuild of a box is, as the log has it: it goes on where it was left, whoever goes on with it.</summary>
/// <param name="Done">When each step was done in this round; a step that is not done is not in it.</param>
/// <param name="Freed">Ids of the conductor ends that were freed in this round.</param>
/// <param name="Remade">Ids of the ends whose joint was remade in this round.</param>
/// <param name="LeftAs">The state in which the box was left after the last step, where somebody noted it.</param>
public sealed record BoxRebuild(
    IReadOnlyDictionary<RebuildStep, DateTimeOffset> Done, IReadOnlySet<string> Freed, IReadOnlySet<string> Remade, Observed<LeftAsFact>? LeftAs)
{
    /// <summary>As the log names the job.</summary>
    public const string Job = "box rebuild";

    /// <summary>The repair of the practice book by which a joint is remade.</summary>
    public const string Remaking = "splice remade";

    public static IReadOnlyList<RebuildStep> Steps { get; } = Enum.GetValues<RebuildStep>();

    public bool IsBegun => Done.Count + Freed.Count + Remade.Count > 0;

    public bool IsFinished => Done.ContainsKey(RebuildStep.House);

    /// <summary>The first step that is not done; the last one where all are.</summary>
    public RebuildStep Next => Steps.FirstOrDefault(step => !Done.ContainsKey(step), RebuildStep.House);

    /// <summary>As the log names the step.</summary>
    public static string Named(RebuildStep step) => step switch
    {
        RebuildStep.Clear => "cleared",
        RebuildStep.Photograph => "photographed",
        RebuildStep.Tag => "tagged",
        RebuildStep.Free => "freed",
        RebuildStep.Remake => "remade",
        RebuildStep.Retest => "retested",
        _ => "housed",
    };

    /// <summary>A step, as it is noted.</summary>
    /// <param name="end">The conductor end that was freed, where one is.</param>
    public static StepFact Noted(string box, RebuildStep step, string? end = null) => new() { Job = Job, Place = box, Step = Named(step), Target = end };

    /// <summary>How far it is. A box that was housed and is begun again begins at the first step.</summary>
    public static BoxRebuild Of(PropertyHistory history, BoxCard card) => new RebuildReader(history, card).Read();
}
