using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>A photo that stands in the log, once, with everything that it belongs to.</summary>
/// <param name="Fact">What was noted of it, the newest word first.</param>
/// <param name="At">When it was taken.</param>
/// <param name="Things">Ids of the places and things that it shows.</param>
/// <param name="Entry">The entry that noted it first.</param>
public sealed record Photo(PhotoFact Fact, DateTimeOffset At, IReadOnlySet<string> Things, EntryId Entry);

/// <summary>The photos of a property, oldest first.</summary>
public sealed record PhotoAlbum(IReadOnlyList<Photo> All)
{
    public static PhotoAlbum Of(PropertyHistory history)
    {
        var (facts, identity) = (history.Facts, history.Facts.Identity);
        var bearers = Bearers(facts);
        return new PhotoAlbum(
        [
            .. facts.Photos.GroupBy(photo => photo.Fact.Hash).Select(notes =>
            {
                var fact = notes.Select(note => note.Fact).Aggregate(Overlay.Of);
                IEnumerable<string?> own = [fact.Place, fact.About];
                return new Photo(fact, notes.First().At, own.Concat(bearers[fact.Hash].SelectMany(PhotoSubject.Of)).OfType<string>().Select(identity.Of).ToHashSet(StringComparer.Ordinal), notes.First().Entry);
            }).OrderBy(photo => photo.At),
        ]);
    }

    /// <summary>Those of a place or thing.</summary>
    /// <param name="id">The id that stands for it.</param>
    public IReadOnlyList<Photo> Of(string id) => [.. All.Where(photo => photo.Things.Contains(id))];

    /// <summary>By the hash of a photo: the notes that have it.</summary>
    private static ILookup<string, Fact> Bearers(Facts facts) =>
        facts.Pictured.SelectMany(note => note.Fact.Photos.Select(hash => (Hash: hash, note.Fact))).ToLookup(pair => pair.Hash, pair => pair.Fact);
}
