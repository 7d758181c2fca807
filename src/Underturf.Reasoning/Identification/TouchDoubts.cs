using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Identification;

/// <summary>What is odd about a round of touches that can be used all the same.</summary>
internal sealed class TouchDoubts(Case matter, Bundle bundle)
{
    public IEnumerable<Problem> Of(Observed<TouchFact> note, Touching touching)
    {
        foreach (var stray in note.Fact.Touched.Where(e => matter.View.Knows(e) && bundle.RowOf(matter.View.Identity.Of(e)) < 0))
        {
            yield return new Problem(
                note.Entry.ToString(),
                $"touches {matter.View.Name(matter.View.Identity.Of(stray))} ('{stray}'), which is no conductor end of this place; the others are used",
                "Strike it and note it again with the ends of this place, or note where that end is",
                Severity.Notice);
        }

        if (Alike(touching) is var (a, b))
        {
            yield return new Problem(
                note.Entry.ToString(),
                $"reads through resistors on {bundle.Ends[a].Ends[0].Name} and {bundle.Ends[b].Ends[0].Name} that this meter cannot tell apart for sure at the far side of the wire",
                "Fit one of them with a resistor that identify proposes, note it and read once more",
                Severity.Notice);
        }
    }

    /// <summary>Two ends whose resistors lie closer than those that are picked for a plan; no resistor at all is as good as any other.</summary>
    private static (int A, int B)? Alike(Touching touching)
    {
        if (touching.IsCheck || touching.Ohms is not { } reading)
        {
            return null;
        }

        var fitted = touching.Touched.Index().Where(e => reading.Expected[e.Index] < reading.Most).OrderBy(e => reading.Expected[e.Index]).ToList();
        foreach (var (low, high) in fitted.Zip(fitted.Skip(1)))
        {
            if (!ResistorChoice.AreApart(reading.Expected[low.Index], reading.Spread[low.Index], reading.Expected[high.Index], reading.Spread[high.Index]))
            {
                return (low.Item, high.Item);
            }
        }

        return null;
    }
}
