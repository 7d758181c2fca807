namespace Underturf.Numerics;

/// <summary>Minutes of searching at one stop after those spent there before.</summary>
internal readonly struct SearchBout
{
    public SearchBout(SearchCurve curve, double spentMinutes, double minutes)
    {
        var before = curve.Found(spentMinutes);
        EffortMinutes = minutes;
        Found = curve.Found(spentMinutes + minutes) - before;
        SparedMinutes = curve.SparedMinutes(spentMinutes + minutes) - curve.SparedMinutes(spentMinutes) - (before * minutes);
    }

    public double EffortMinutes { get; }

    /// <summary>Chance found in it.</summary>
    public double Found { get; }

    /// <summary>Minutes of it that those who find in it need not spend.</summary>
    public double SparedMinutes { get; }
}
