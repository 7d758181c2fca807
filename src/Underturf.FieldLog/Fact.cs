namespace Underturf.FieldLog;

/// <summary>How a statement came to be known.</summary>
public enum Grade
{
    Measured,
    Told,
    Estimated,
    Inferred,
    Unknown,
}

/// <summary>A place on the property: metres east and north of its datum.</summary>
public readonly record struct Position(double EastMetres, double NorthMetres)
{
    public double DistanceMetresTo(Position other) =>
        Math.Sqrt(((EastMetres - other.EastMetres) * (EastMetres - other.EastMetres))
            + ((NorthMetres - other.NorthMetres) * (NorthMetres - other.NorthMetres)));
}

/// <summary>What one entry says. The concrete records are the kinds of the field log; their stored names are in <see cref="FactKinds"/>.</summary>
public abstract record Fact
{
    /// <summary>The person speaking, as the log names them.</summary>
    public string? By { get; init; }

    /// <summary>How the writer knows it; measured (seen with own eyes or instrument) where nothing is said.</summary>
    public Grade Sure { get; init; } = Grade.Measured;

    /// <summary>Free text, in the writer's own words.</summary>
    public string? Note { get; init; }

    /// <summary>SHA-256 of photos that belong to it.</summary>
    public IReadOnlyList<string> Photos { get; init; } = [];
}
