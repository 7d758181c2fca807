namespace Underturf.Reasoning.Diagnosis;

/// <summary>Worlds that a technician would call one explanation, most probable first.</summary>
internal sealed record WorldGroup(IReadOnlyList<World> Worlds)
{
    public double Probability { get; } = Worlds.Sum(w => w.Probability);
}
