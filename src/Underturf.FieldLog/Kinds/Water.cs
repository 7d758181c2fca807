using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>A point of connection: where water comes onto the property, with its meter.</summary>
public sealed record WaterSupplyFact : Fact
{
    public required string Id { get; init; }

    public string? Label { get; init; }

    public Position? Position { get; init; }

    /// <summary>Height of its gauge over any one level of the property.</summary>
    public Length? Elevation { get; init; }

    /// <summary>Nominal size of the meter.</summary>
    public Length? Meter { get; init; }

    /// <summary>A flow through the meter of which the loss is known, from its plate or by two gauges.</summary>
    public Flow? MeterAt { get; init; }

    /// <summary>What the meter loses at that flow.</summary>
    public Pressure? MeterLoss { get; init; }

    /// <summary>The backflow device, and when it was last tested.</summary>
    public string? Backflow { get; init; }

    /// <summary>What it is: a backflow device of the practice book, for example "double check".</summary>
    public string? BackflowKind { get; init; }

    /// <summary>Nominal size of the backflow device.</summary>
    public Length? BackflowSize { get; init; }

    /// <summary>A flow through it of which the loss is known.</summary>
    public Flow? BackflowAt { get; init; }

    /// <summary>What it loses at that flow.</summary>
    public Pressure? BackflowLoss { get; init; }

    /// <summary>What a volume of water costs, in the owner's money.</summary>
    public double? Price { get; init; }

    /// <summary>The volume that costs that.</summary>
    public Volume? PriceOf { get; init; }
}

/// <summary>A joint of pipes: tee, bend, end or riser.</summary>
public sealed record FittingFact : Fact
{
    public required string Id { get; init; }

    public string? Label { get; init; }

    public Position? Position { get; init; }

    public Length? Elevation { get; init; }
}

/// <summary>A run of pipe between two things that hold water: supply, fitting, isolation valve, valve, outlets.</summary>
public sealed record PipeFact : Fact
{
    public required string Id { get; init; }

    public required string From { get; init; }

    public required string To { get; init; }

    public Length? Length { get; init; }

    /// <summary>What it is made to: a series of the practice book, for example "Schedule 40".</summary>
    public string? Series { get; init; }

    /// <summary>Nominal size in inches, as it is called: "1 1/2".</summary>
    public string? Size { get; init; }

    /// <summary>Inside diameter, where it was measured.</summary>
    public Length? Inside { get; init; }

    public IReadOnlyList<Position> Route { get; init; } = [];
}

/// <summary>A valve in the pipe that is turned by hand.</summary>
public sealed record IsolationValveFact : Fact
{
    public required string Id { get; init; }

    public string? Label { get; init; }

    public Position? Position { get; init; }

    public Length? Elevation { get; init; }

    /// <summary>The box it sits in.</summary>
    public string? Box { get; init; }

    /// <summary>Nominal size.</summary>
    public Length? Size { get; init; }

    /// <summary>What lies behind it where no pipes are noted: stations, valves, further isolation valves.</summary>
    public IReadOnlyList<string> Shuts { get; init; } = [];
}

/// <summary>Outlets of one kind on a station.</summary>
public sealed record OutletFact : Fact
{
    public required string Id { get; init; }

    public required string Station { get; init; }

    /// <summary>What it is: an outlet of the practice book, for example "spray head".</summary>
    public required string What { get; init; }

    /// <summary>How many there are.</summary>
    public required int Count { get; init; }

    /// <summary>Of one of them, at <see cref="Pressure"/>.</summary>
    public Flow? Flow { get; init; }

    /// <summary>The pressure at which it gives that.</summary>
    public Pressure? Pressure { get; init; }

    /// <summary>The fitting that they are on, where pipes are noted.</summary>
    public string? Fitting { get; init; }

    public Length? Elevation { get; init; }
}

/// <summary>A valve was turned by hand: an isolation valve, or a valve's flow control or bleed.</summary>
public sealed record SettingFact : Fact
{
    /// <summary>The isolation valve or valve.</summary>
    public required string Of { get; init; }

    /// <summary>"shut", "open" or "partly open" from now on.</summary>
    public required string State { get; init; }
}

/// <summary>Cans were set out over what a station waters, and it ran.</summary>
public sealed record CatchFact : Fact
{
    public required string Station { get; init; }

    /// <summary>How long it ran.</summary>
    public double? Minutes { get; init; }

    /// <summary>How high the water stands in each can.</summary>
    public required IReadOnlyList<Length> Cans { get; init; }

    /// <summary>Where each can stood, in the same order.</summary>
    public IReadOnlyList<Position> Where { get; init; } = [];
}

/// <summary>Somebody walked what runs, or what should not, and looked.</summary>
public sealed record WatchFact : Fact
{
    /// <summary>The station that ran; with everything off where nothing is said.</summary>
    public string? Station { get; init; }

    /// <summary>What it is about where everything was off: the station whose ground or outlets were looked at.</summary>
    public string? About { get; init; }

    /// <summary>Names of what was seen in the practice book, for example "misting"; empty where all was well.</summary>
    public IReadOnlyList<string> Seen { get; init; } = [];

    /// <summary>Where that was.</summary>
    public IReadOnlyList<Position> Where { get; init; } = [];

    public double? Minutes { get; init; }
}
