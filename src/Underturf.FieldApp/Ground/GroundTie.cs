using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>A tie as the map draws it: from the mark to the thing, or, where nobody knows the place of the thing, the circle on which it lies. And the ellipses that ties leave.</summary>
public sealed record GroundTie(string Thing, Grade Grade, string Words, IReadOnlyList<Position> Line)
{
    private const int Corners = 48;

    public static IReadOnlyList<GroundTie> Of(PropertyHistory history, TiedPlaces tied) =>
    [
        .. Tie.All(history).Where(tie => tie.From is not null).Select(tie => new GroundTie(tie.Thing, tie.Grade, tie.Words(history.Facts.UsesUsUnits), Drawn(tie, tied.View))),
        .. tied.All.SelectMany(place => place.Spots.Select(spot => new GroundTie(place.Thing, Grade.Inferred, "", spot.Edge()))),
    ];

    private static IReadOnlyList<Position> Drawn(Tie tie, PropertyView view) =>
        view.PositionOf(tie.Thing) is { } at ? [tie.From!.Value, at] : Around(tie.From!.Value, tie.Distance.Metres);

    private static Position[] Around(Position middle, double metres) =>
        [.. Enumerable.Range(0, Corners + 1).Select(i => Math.Tau * i / Corners).Select(turn => new Position(middle.EastMetres + (metres * Math.Cos(turn)), middle.NorthMetres + (metres * Math.Sin(turn))))];
}
