using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Location;

/// <summary>Where things lie by all notes: marks of the ground as the property teaches them, then what the notes say of each group.</summary>
internal sealed class BeliefFinder
{
    private readonly LocatingPractice book;
    private readonly GroundCells cells;
    private readonly MarkLayers layers;
    private readonly LocationMemory memory;

    /// <param name="groups">How many groups a note can mean that names none.</param>
    /// <param name="memory">What earlier answers left.</param>
    public BeliefFinder(PropertyHistory history, PropertyView view, PracticeBook practice, GroundCells cells, CarefulGround careful, GroundFinder ground, int groups, LocationMemory memory)
    {
        (book, this.cells, this.memory) = (practice.Locating, cells, memory);
        var found = cells.IsGrid ? FoundThings.Of(view) : [];
        layers = new MarkLayers(view, book, cells, [.. found.Select(f => f.At)], memory);
        Learned = LearnedMarks.Of(practice, history, view, cells, layers, found, memory);
        Clues = new ClueFinder(history, view, practice, cells, careful, ground.SpotPlaces, groups);
        Found = found.Count;
    }

    public LearnedMarks Learned { get; }

    /// <summary>How many found things that rests on.</summary>
    public int Found { get; }

    public ClueFinder Clues { get; }

    /// <param name="keeps">Whether what is its own is kept for the next answer: for many things that would be too much.</param>
    public GroupBelief Of(SoughtGroup group, bool keeps)
    {
        var told = Clues.Find(group);
        return new GroupBelief(group, told, LocationBelief.Of([.. group.Things.Select(t => Prior(t, keeps))], [.. group.Things.Select(t => t.None)], told));
    }

    private double[] Prior(Sought thing, bool keeps)
    {
        if (thing.Stretches is { } stretches)
        {
            return Stretch.Prior(stretches, cells, book.Anywhere);
        }

        var own = layers.Of(thing, keeps);
        return keeps ? memory.Keep(() => Learned.Prior(own, cells), [Learned, .. own]) : Learned.Prior(own, cells);
    }
}

/// <summary>What is believed of the things of a group.</summary>
/// <param name="Told">What the notes say of them.</param>
internal sealed record GroupBelief(SoughtGroup Group, IReadOnlyList<Clue> Told, LocationBelief Belief);
