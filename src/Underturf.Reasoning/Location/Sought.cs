namespace Underturf.Reasoning.Location;

/// <summary>A thing that lies hidden.</summary>
/// <param name="Id">Of its note, or, of a station's valve that nobody has noted, made of the station's.</param>
/// <param name="What">Name in the practice book.</param>
/// <param name="Station">The station it belongs to.</param>
/// <param name="Own">What on the ground is its own.</param>
/// <param name="None">Chance beforehand that there is none.</param>
internal sealed record Sought(string Id, string What, string Name, string? Station, OwnGround Own, double None)
{
    /// <summary>The ways on which it lies by what the diagnosis infers; nothing for what the marks of the ground place.</summary>
    public IReadOnlyList<Stretch>? Stretches { get; init; }
}

/// <summary>Things that evidence about a station does not tell apart.</summary>
internal sealed record SoughtGroup(string Name, IReadOnlyList<Sought> Things);
