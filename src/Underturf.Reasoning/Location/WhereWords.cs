using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Reasoning.Location;

/// <summary>Says where a point is: from the nearest thing with a name, and by what it is beside.</summary>
internal sealed class WhereWords(PropertyView view, bool usUnits)
{
    /// <summary>Nearer than this nobody asks in which direction.</summary>
    private const double AtMetres = 1;

    private readonly (string Name, GroundShape Shape)[] named =
    [
        .. view.Controllers.Keys.Concat(view.Boxes.Keys).Concat(view.Valves.Where(v => v.Value.Box is null).Select(v => v.Key))
            .Select(id => (view.Name(id), view.PositionOf(id)))
            .Where(p => p.Item2 is not null)
            .Select(p => (p.Item1, GroundShape.Point(p.Item2!.Value))),
        .. view.Ground.Where(g => g.Value.Label is not null).Select(g => (view.Name(g.Key), GroundShape.Of(g.Value))),
    ];

    /// <summary>"6 ft north-east of box 7, in front lawn"; the position where nothing has a name.</summary>
    public string Say(Position at)
    {
        var inside = named.Where(n => n.Shape.Contains(at)).Select(n => n.Name).FirstOrDefault();
        var beside = named.OrderBy(n => n.Shape.Closed).ThenBy(n => n.Shape.DistanceMetresTo(at)).FirstOrDefault();
        var words = beside.Name is null ? $"{Diagnosis.Say.Length(at.EastMetres, usUnits)} east, {Diagnosis.Say.Length(at.NorthMetres, usUnits)} north of the datum" : From(beside.Name, beside.Shape, at);
        return inside is null || inside == beside.Name ? words : $"{words}, in {inside}";
    }

    private string From(string name, GroundShape shape, Position at)
    {
        var metres = shape.DistanceMetresTo(at);
        if (metres < AtMetres)
        {
            return $"at {name}";
        }

        var from = shape.Sides().Select(side => GroundShape.Foot(side.From, side.To, at)).MinBy(p => p.DistanceMetresTo(at));
        return $"{Diagnosis.Say.Length(metres, usUnits)} {Winds.Of(at.EastMetres - from.EastMetres, at.NorthMetres - from.NorthMetres)} of {name}";
    }
}
