namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// Bounds what a station's ohms can speak for another's valves hanging on its conductor, before the joined circuit is laid out. Were the other's whole loop
/// between conductor and common at the place where they are joined, the terminal would show no less than it does: the other's current would share the common from there
/// on, and a + b beside c + d is never less than a beside c and b beside d in a row (exact; resistance is superadditive under parallel connection).
/// </summary>
internal static class JoinedBound
{
    /// <summary>A bound of the logarithm of the chance of a note; 0 where it says nothing.</summary>
    public static double Log(Evidence note, Suspect pair, Outlook outlook, Cures cures)
    {
        if (note is not ReadingEvidence { Measures: Property.Practice.Measure.StationOhms } reading
            || cures.IsCured(pair, note.Moment)
            || reading.Benches.Loops(reading.Stations[0], pair) is not var (own, before, other))
        {
            return 0;
        }

        var beyond = Math.Max(0, outlook.Mean(own) - before);
        var loop = outlook.Mean(other);
        var most = before + (beyond * loop / (beyond + loop));
        return reading.Display.MostLogChance(most, Sigma(own, outlook) + Sigma(other, outlook) + Math.Sqrt(reading.Display.Instrument.OwnVariance(most)));
    }

    /// <summary>The slopes of the joined circuit are no larger than those of the two loops by themselves.</summary>
    private static double Sigma(Prediction loop, Outlook outlook) => Math.Sqrt(outlook.Variance(loop));
}
