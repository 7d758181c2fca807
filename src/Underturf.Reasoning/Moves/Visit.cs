namespace Underturf.Reasoning.Moves;

/// <summary>A walk to one place and what is done there for one or more questions; or a repair.</summary>
/// <param name="Place">Id of the place.</param>
/// <param name="Steps">In order, none twice.</param>
/// <param name="Worths">For each subject that it serves, minutes of expected loss saved; nothing taken off.</param>
/// <param name="WalkMinutes">From where one stands.</param>
/// <param name="Remedy">What is repaired; nothing where something is found out.</param>
internal sealed record Visit(string Place, IReadOnlyList<MoveStep> Steps, IReadOnlyDictionary<SubjectPlan, double> Worths, double WalkMinutes, Remedy? Remedy = null)
{
    public double StepMinutes { get; } = Steps.Sum(s => s.Minutes);

    public double Minutes => WalkMinutes + StepMinutes;

    public double Worth { get; } = Worths.Values.Sum();

    public double Gain => Worth - Minutes;

    /// <summary>The subject that it serves most.</summary>
    public SubjectPlan Leading => Worths.MaxBy(w => w.Value).Key;
}
