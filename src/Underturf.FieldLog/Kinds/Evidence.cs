using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>What an instrument showed: a quantity with its unit, or over-range.</summary>
public readonly record struct Shown(Quantity? Value)
{
    public static Shown OverRange => new(null);

    public bool IsOverRange => Value is null;

    /// <summary>Reads "31.5 ohm", in any unit that an instrument shows, or "over range".</summary>
    public static Outcome<Shown> Parse(string text) => ShownText.Parse(text);
}

/// <summary>A number with its dimension, in SI, and the text that the user wrote.</summary>
public readonly record struct Quantity(double Si, Dimension Dimension, string Text);

/// <summary>A reading with an instrument.</summary>
public sealed record ReadingFact : Fact
{
    /// <summary>The way it was taken: the name of a probe in the practice book, for example "station ohms" or "coil ohms".</summary>
    public required string How { get; init; }

    /// <summary>The station or stations under test; two for station-to-station ohms, none for the supply or the meter.</summary>
    public IReadOnlyList<string> Stations { get; init; } = [];

    /// <summary>Where the instrument was, when not at the controller.</summary>
    public string? Place { get; init; }

    public required Shown Value { get; init; }

    public string? Instrument { get; init; }

    /// <summary>True where the display would not settle.</summary>
    public bool Drifting { get; init; }
}

/// <summary>A station was run and watched.</summary>
public sealed record TestFact : Fact
{
    public required string Station { get; init; }

    /// <summary>The places that watered, as named by the watcher; empty where none did.</summary>
    public IReadOnlyList<string> Watered { get; init; } = [];

    /// <summary>How the valve behaved: "opens", "chatters" or "stays shut"; nothing where it was not watched.</summary>
    public string? Behaved { get; init; }
}

/// <summary>Somebody opened a place and looked.</summary>
public sealed record LookFact : Fact
{
    public required string Place { get; init; }

    /// <summary>Names of findings in the practice book, for example "sharing device", "bad-splice"; empty where nothing odd was seen.</summary>
    public IReadOnlyList<string> Found { get; init; } = [];

    /// <summary>The stations whose wires were looked at; empty means all that pass here.</summary>
    public IReadOnlyList<string> Stations { get; init; } = [];

    public double? Minutes { get; init; }
}

/// <summary>Something somebody said.</summary>
public sealed record ToldFact : Fact
{
    public required string Who { get; init; }

    public required string Text { get; init; }

    /// <summary>The thing it is about.</summary>
    public string? About { get; init; }
}
