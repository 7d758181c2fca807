using Underturf.FieldLog;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning;

/// <summary>A reading beside its prediction with nothing broken.</summary>
/// <param name="Stations">Labels of the stations it is about.</param>
/// <param name="Surprise">
/// How unlikely what was read is with nothing broken, against what one would typically read: 0 for an ordinary reading, 3 for one in a
/// thousand; in powers of ten.
/// </param>
public sealed record ReadingLine(EntryId Entry, DateTimeOffset At, IReadOnlyList<string> Stations, string What, string Predicted, string Observed, double Surprise)
{
    internal static ReadingLine Of(Case matter, Evidence evidence, Outlook outlook) => new(
        evidence.Entry,
        evidence.Moment.At,
        [.. evidence.Stations.Select(matter.View.StationNumber)],
        evidence.What,
        evidence.Predicted([], outlook, matter.Cures),
        evidence.Observed,
        Math.Max(0, evidence.Surprise(outlook)));
}
