using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.FieldApp;

/// <summary>How a thing lies on the ground.</summary>
public enum GroundForm
{
    Point,
    Line,
    Outline,
}

/// <summary>One thing on the plan of the property.</summary>
/// <param name="Kind">What it is, in the words of <see cref="GroundWords"/>: "box", "valve", "lawn".</param>
/// <param name="Grade">How its place is known.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Shape">Metres east and north of the datum: one position, the line, or the corners of the outline.</param>
public sealed record GroundFeature(string Id, string Kind, Grade Grade, string Name, GroundForm Form, IReadOnlyList<Position> Shape)
{
    /// <summary>Its name without what its sign says already: "4" of "box 4". A cable or a pipe has none, its ends do.</summary>
    public string Sign => Kind is GroundWords.Cable or GroundWords.Pipe ? ""
        : new[] { Kind, Kind.Split(' ')[0] }.FirstOrDefault(word => Name.StartsWith($"{word} ", StringComparison.OrdinalIgnoreCase)) is { } said ? Name[(said.Length + 1)..] : Name;

    public GroundShape Lies => new(Shape, Form == GroundForm.Outline);

    /// <summary>The middle of the box around it; of a point the point.</summary>
    public Position Middle => new(
        (Shape.Min(p => p.EastMetres) + Shape.Max(p => p.EastMetres)) / 2,
        (Shape.Min(p => p.NorthMetres) + Shape.Max(p => p.NorthMetres)) / 2);
}

/// <summary>A thing whose place nobody has noted.</summary>
public sealed record UnplacedThing(string Id, string Kind, string Name);
