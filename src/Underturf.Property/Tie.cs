using System.Globalization;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Property;

/// <summary>A taped distance between a mark and a thing, as it stands.</summary>
/// <param name="Thing">The id that stands for the thing.</param>
/// <param name="Mark">The id that stands for the mark.</param>
/// <param name="From">The point it was taped from; nothing where the mark is larger than a point and nobody said from which.</param>
public sealed record Tie(string Thing, string Mark, Position? From, Length Distance, Length? Spread, Grade Grade)
{
    /// <summary>"41.5 ft", to a tenth.</summary>
    public string Words(bool us) => Say(Distance.Metres, us);

    /// <summary>A length as a tape shows it.</summary>
    public static string Say(double metres, bool us) => string.Create(CultureInfo.InvariantCulture, $"{Units.In(metres, us ? "ft" : "m"):0.0} {(us ? "ft" : "m")}");

    /// <summary>The ties of a property, the newest between the same two, in the order of their things.</summary>
    public static IReadOnlyList<Tie> All(PropertyHistory history)
    {
        var view = history.Now;
        return
        [
            .. history.Facts.Ties
                .GroupBy(note => (Thing: view.Identity.Of(note.Fact.Thing), Mark: view.Identity.Of(note.Fact.Mark), note.Fact.Corner))
                .Select(notes => Of(notes.Last().Fact, notes.Key.Thing, notes.Key.Mark, view))
                .OrderBy(tie => view.Name(tie.Thing), NaturalOrder.Instance).ThenBy(tie => view.Name(tie.Mark), NaturalOrder.Instance),
        ];
    }

    private static Tie Of(TieFact fact, string thing, string mark, PropertyView view) =>
        new(thing, mark, fact.Corner ?? PointOf(mark, view), fact.Distance, fact.Spread, fact.Sure);

    private static Position? PointOf(string mark, PropertyView view) =>
        view.PositionOf(mark) ?? (view.Ground.TryGetValue(mark, out var ground) && ground.Shape is [var only] ? only : null);
}
