namespace Underturf.Reasoning.Telling;

/// <summary>
/// How strongly a reading speaks, in words: the limits 3, 20 and 150 of Kass and Raftery, "Bayes factors", JASA 90 (1995), with their "positive",
/// "strong" and "very strong" (from memory).
/// </summary>
public static class EvidenceScale
{
    /// <summary>Limits as log10 of how many times likelier.</summary>
    private static readonly double bare = Math.Log10(3), strong = Math.Log10(20), veryStrong = Math.Log10(150);

    /// <param name="weight">log10 of how much likelier the reading is under an explanation than under the others.</param>
    public static string Say(double weight)
    {
        var way = weight > 0 ? "for" : "against";
        return Math.Abs(weight) switch
        {
            var w when w < bare => "speaks neither way",
            var w when w < strong => $"speaks {way}",
            var w when w < veryStrong => $"speaks strongly {way}",
            _ => $"speaks very strongly {way}",
        };
    }
}
