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
        foreach (var stray in note.Fact.Touched.Where(t => matter.View.Knows(t) && bundle.At(matter.View.Identity.Of(t), touching.Turned) < 0))
        {
            yield return new Problem(
                note.Entry.ToString(),
                $"touches {matter.View.Name(matter.View.Identity.Of(stray))} ('{stray}'), which is no {(touching.Turned ? "wire that leaves a controller" : "conductor end of this place")}; the others are used",
                touching.Turned ? "Strike it and note it again with stations or ends at the controller" : "Strike it and note it again with the ends of this place, or note where that end is",
                Severity.Notice);
        }

        if (Alike(touching) is var (a, b))
        {
            yield return new Problem(
                note.Entry.ToString(),
                $"reads through resistors on {Name(a, touching)} and {Name(b, touching)} that this meter cannot tell apart for sure at the far side of the wire",
                "Fit one of them with a resistor that identify proposes, note it and read once more",
                Severity.Notice);
        }
    }

    /// <summary>Two readings of the same, or two comparisons, that do not say the same: what misled the one misleads the other, so that only the later counts.</summary>
    public Problem ReadAgain(NotedTouching earlier, NotedTouching later) => new(
        earlier.Note.Entry.ToString(),
        $"shows {Shown(earlier.Touching)}, note {later.Note.Entry} of the same shows {Shown(later.Touching)}: only the later one counts",
        "Look at the contacts and read once more; strike the one that was wrong",
        Severity.Notice);

    private string Shown(Touching touching) => touching.Shows is { } one and >= 0 ? Name(one, touching) : "none of them";

    private string Name(int touched, Touching touching) => bundle.NameOf(touched, touching.Turned);

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
