using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Identification;

/// <summary>Finds notes of touches that all the others speak against.</summary>
internal sealed class DoubtFinder(Bundle bundle, NamingBelief belief, NamingTable beforehand)
{
    /// <summary>What the others give less than this chance is doubted.</summary>
    private const double Unlikely = 0.03;

    public IEnumerable<NamingDoubt> Find(IReadOnlyList<NotedTouching> touches)
    {
        foreach (var (note, touching) in touches.Where(t => t.Touching.Way.Shows == NamingSign.Answers).Select(t => (t.Note, t.Touching)))
        {
            var without = beforehand.Clone();
            foreach (var other in touches.Where(t => t.Touching != touching))
            {
                without.Take(other.Touching);
            }

            var doubted = touching.Touched.Select(e => (End: e, Chance: belief.ChanceWithout(e, without, touching))).Where(e => e.Chance < Unlikely).OrderBy(e => e.Chance).ToList();
            if (doubted is [var first, ..])
            {
                yield return new NamingDoubt(note.Entry.ToString(), Why(first.End, first.Chance, touching));
            }
        }
    }

    private string Why(int end, double chance, Touching touching)
    {
        var (wire, share) = belief.Best(end);
        var name = bundle.Ends[end].Ends[0].Name;
        var carried = string.Join(", ", bundle.Wires.Where((_, w) => touching.Put[w]).Select(w => w.Name));
        var said = touching.Answered.Contains(end) ? "answered" : "did not answer";
        var likely = wire < bundle.Wires.Count ? bundle.Wires[wire].Name : "no wire of a controller";
        return $"{name} {said} with {touching.Way.Name} on {carried}; by all other notes that has a chance of {Say.Share(chance)}, and it is {likely} ({Say.Share(share)}). Touch {name} once more the same way.";
    }
}
