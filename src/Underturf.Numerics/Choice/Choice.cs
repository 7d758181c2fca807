namespace Underturf.Numerics;

/// <summary>One choice among many alternatives.</summary>
/// <param name="Chosen">Features of what was chosen.</param>
/// <param name="Alternatives">For each feature its value at each alternative, which stand for all there are.</param>
public sealed record Choice(double[] Chosen, double[][] Alternatives)
{
    private readonly bool[] tells = [.. Chosen.Select((value, k) => value != 0 || Alternatives[k].AsSpan().ContainsAnyExcept(0))];

    /// <summary>False for a feature that nothing here has.</summary>
    internal bool Tells(int feature) => tells[feature];
}
