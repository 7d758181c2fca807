using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>A controller and its supply.</summary>
public sealed record ControllerFact : Fact
{
    public required string Id { get; init; }

    public string? Label { get; init; }

    public Position? Position { get; init; }

    /// <summary>How many station terminals it has.</summary>
    public required int Terminals { get; init; }

    /// <summary>Open-circuit volts of the transformer's output.</summary>
    public Voltage? Supply { get; init; }

    public ApparentPower? Rated { get; init; }

    public Frequency? Frequency { get; init; }

    /// <summary>The normally closed master valve that is fed with every station, or the place where it sits.</summary>
    public string? Master { get; init; }

    /// <summary>A relay at the controller that starts a pump with every station.</summary>
    public PumpRelay? PumpRelay { get; init; }

    /// <summary>The sensor in the common, for example "rain sensor".</summary>
    public string? Sensor { get; init; }
}

/// <summary>A station: a terminal in use and what is known to water from it.</summary>
public sealed record StationFact : Fact
{
    public required string Id { get; init; }

    public required string Controller { get; init; }

    public required int Terminal { get; init; }

    public string? Label { get; init; }

    /// <summary>The place or places it is known to water.</summary>
    public IReadOnlyList<string> Waters { get; init; } = [];

    /// <summary>Minutes as found in the programme.</summary>
    public double? Minutes { get; init; }

    /// <summary>Label of the common by which it returns; the one usual common where nothing is said.</summary>
    public string? Common { get; init; }
}

/// <summary>A valve box, junction box or bare pit.</summary>
public sealed record BoxFact : Fact
{
    public required string Id { get; init; }

    public string? Label { get; init; }

    public Position? Position { get; init; }

    public string? Size { get; init; }
}

/// <summary>A valve that was found or is said to exist.</summary>
public sealed record ValveFact : Fact
{
    public required string Id { get; init; }

    public string? Label { get; init; }

    /// <summary>The box it sits in, where it has one.</summary>
    public string? Box { get; init; }

    public Position? Position { get; init; }

    /// <summary>The station it is known to belong to.</summary>
    public string? Station { get; init; }

    public Length? Size { get; init; }

    /// <summary>Height over any one level of the property.</summary>
    public Length? Elevation { get; init; }

    public string? Body { get; init; }

    public int? Screws { get; init; }

    /// <summary>Thread of the coil, in words.</summary>
    public string? Thread { get; init; }

    public string? Waters { get; init; }

    /// <summary>The user's own text about make and model.</summary>
    public string? Make { get; init; }
}

/// <summary>The coil on a valve.</summary>
public sealed record CoilFact : Fact
{
    public required string Id { get; init; }

    public required string Valve { get; init; }

    /// <summary>Ohms on its plate or by its family; a reading of the coil alone is a reading, not this.</summary>
    public Resistance? Ohms { get; init; }

    public string? Make { get; init; }
}

/// <summary>One conductor end seen at a place.</summary>
public sealed record EndFact : Fact
{
    public required string Id { get; init; }

    /// <summary>The box, controller or valve where the end was seen.</summary>
    public required string Place { get; init; }

    public string? Label { get; init; }

    public string? Colour { get; init; }

    public WireSize? Gauge { get; init; }

    /// <summary>Ends seen joined to it at this place.</summary>
    public IReadOnlyList<string> Mates { get; init; } = [];

    /// <summary>The far end of the same conductor, where it is known.</summary>
    public string? FarEnd { get; init; }

    public string? Cable { get; init; }

    /// <summary>What it carries, where it is known.</summary>
    public string? Station { get; init; }

    public bool? Common { get; init; }
}

/// <summary>A joint seen at a place.</summary>
public sealed record SpliceFact : Fact
{
    public required string Id { get; init; }

    public required string Place { get; init; }

    /// <summary>The ends it joins.</summary>
    public IReadOnlyList<string> Joins { get; init; } = [];

    public string? Connector { get; init; }
}

/// <summary>A run of wire between two places, traced or told.</summary>
public sealed record CableFact : Fact
{
    public required string Id { get; init; }

    public required string From { get; init; }

    public required string To { get; init; }

    public Length? Length { get; init; }

    /// <summary>Size of its station conductors.</summary>
    public WireSize? Gauge { get; init; }

    /// <summary>Size of its common, where it differs.</summary>
    public WireSize? CommonGauge { get; init; }

    public int? Conductors { get; init; }

    /// <summary>The stations whose conductors run in it.</summary>
    public IReadOnlyList<string> Carries { get; init; } = [];

    public IReadOnlyList<Position> Route { get; init; } = [];
}
