using System.Text.Json.Serialization;
using Underturf.FieldLog;

namespace Underturf.Reasoning;

/// <summary>Something to do next: one walk to one place, and everything that is worth doing there.</summary>
/// <param name="Action">What to do.</param>
/// <param name="Where">Label of the place.</param>
/// <param name="Minutes">Expected minutes, walking included.</param>
/// <param name="Worth">Minutes of expected loss that it saves, its own minutes not yet taken off.</param>
/// <param name="Caution">The cautions that belong to it.</param>
/// <param name="Question">Id of the question it serves most.</param>
public sealed record Move(string Action, string Where, double Minutes, double Worth, string Caution, string Question)
{
    /// <summary>Id of the place.</summary>
    public string Place { get; init; } = string.Empty;

    /// <summary>Minutes of walking, contained in <see cref="Minutes"/>.</summary>
    public double WalkMinutes { get; init; }

    /// <summary>Minutes of finding its place, where nobody has found it yet, contained in <see cref="Minutes"/>.</summary>
    public double FindMinutes { get; init; }

    /// <summary>What it tells apart, in words; empty for a repair.</summary>
    public string Why { get; init; } = string.Empty;

    /// <summary>What of the job its minutes hold, in words, where they leave the most of it out; otherwise empty.</summary>
    public string LeavesOut { get; init; } = string.Empty;

    /// <summary>What is done there, in order.</summary>
    public IReadOnlyList<MoveStep> Steps { get; init; } = [];

    /// <summary>True where it is the repair itself: enough is known.</summary>
    [JsonIgnore]
    public bool IsRepair => Steps.Any(s => s.Asks is WorkFact);
}

/// <summary>One thing to do at the place of a move.</summary>
/// <param name="Action">What to do.</param>
/// <param name="Minutes">At the place.</param>
/// <param name="Caution">The caution that belongs to it.</param>
/// <param name="Question">Id of the question it serves most.</param>
/// <param name="Asks">
/// What is noted afterwards, without what will be seen: a reading stands over range, a look has found nothing, a run names no place. Work is complete.
/// </param>
public sealed record MoveStep(string Action, double Minutes, string Caution, string Question, [property: JsonIgnore] Fact Asks);
