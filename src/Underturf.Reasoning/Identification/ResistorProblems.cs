using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Identification;

/// <summary>Known resistors that are noted where none can be, or of ohms that tell nothing.</summary>
internal static class ResistorProblems
{
    public static IEnumerable<Problem> All(Case matter)
    {
        var most = matter.Book.InstrumentOf(Measure.StationOhms)?.Most ?? double.MaxValue;
        foreach (var note in matter.History.Facts.Resistors.Where(r => matter.View.Knows(r.Fact.End)))
        {
            if (matter.View.Identity.Of(note.Fact.End) is var id && !matter.View.Ends.ContainsKey(id) && !matter.View.Stations.ContainsKey(id))
            {
                yield return new Problem(note.Entry.ToString(), $"puts a resistor on '{note.Fact.End}', which is no conductor end and no station", "Strike it and note it again with the end it is on; at the controller with the station of the wire");
            }
            else if (note.Fact.Ohms is { } ohms && (ohms.Si <= 0 || ohms.Si >= most))
            {
                yield return new Problem(
                    note.Entry.ToString(),
                    $"notes a resistor of {Say.Figure(ohms.Si, Dimension.Resistance)}, {(ohms.Si <= 0 ? "which is none" : "more than the meter of the practice book shows")}",
                    "Strike it and note it again with the ohms that are printed on it");
            }
        }
    }
}
