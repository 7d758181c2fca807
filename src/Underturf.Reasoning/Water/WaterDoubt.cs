namespace Underturf.Reasoning.Water;

/// <summary>The explanation that none of the book's is right.</summary>
internal static class WaterDoubt
{
    public static Explanation Of(double probability) => new("water-unmodelled", probability, "something not modelled", [], [], string.Empty) { Doubt = true };
}
