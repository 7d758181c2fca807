using Underturf.Networks.Wiring;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// A circuit laid out once for one way of measuring, with a slot for everything that a fault may change. A suspect then only changes
/// ohms; a suspect that changes none leaves the reading as it was.
/// </summary>
internal sealed class Bench
{
    /// <summary>Slots of one station's conductor at one leg.</summary>
    internal readonly record struct LegSlots(int Conductor, int Leak, int BranchWire, int BranchCoil);

    /// <summary>Slots of one coil.</summary>
    /// <param name="IsJoined">Its leads are joined: nothing of the coil is read.</param>
    internal readonly record struct CoilSlots(int Coil, int Shunt, int Leg, bool IsJoined);

    public required BenchSetup Setup { get; init; }

    public required WiringNetwork Network { get; init; }

    public required int Plus { get; init; }

    public required int Minus { get; init; }

    /// <summary>Element whose current a clamp shows; -1 where there is none.</summary>
    public required int Through { get; init; }

    public required double[] Ohms { get; init; }

    public required IReadOnlyList<Part> Parts { get; init; }

    internal required IReadOnlyDictionary<(string Station, LegKey Leg), LegSlots> Legs { get; init; }

    internal required IReadOnlyDictionary<LegKey, int> Commons { get; init; }

    internal required IReadOnlyDictionary<(string Station, string Place), CoilSlots> Coils { get; init; }

    /// <summary>The element between controller and field common; -1 where the measurement leaves it out.</summary>
    internal required int Sensor { get; init; }

    internal required int Source { get; init; }

    /// <summary>The element that joins a pair; -1 where there is none.</summary>
    internal required int Join { get; init; }

    /// <summary>The bench with the suspects' effects; nothing where none of them changes it.</summary>
    public Variation? Vary(PracticeBook book, IEnumerable<Suspect> suspects)
    {
        var variation = new Variation(this, book);
        foreach (var suspect in suspects)
        {
            Effects.Apply(suspect, variation);
        }

        return variation.IsChanged ? variation : null;
    }

    /// <summary>The element in which a suspect's ohms or its break would lie; -1 where this bench has none.</summary>
    public int SeriesElement(Suspect suspect) => suspect.Fault.Scope switch
    {
        FaultScope.Conductor or FaultScope.Splice or FaultScope.Branch => Slots(suspect)?.Conductor ?? -1,
        FaultScope.CommonConductor or FaultScope.CommonSplice => Common(suspect),
        FaultScope.Sensor => Sensor,
        FaultScope.Coil => Coil(suspect) is { IsJoined: false } coil ? coil.Coil : -1,
        _ => -1,
    };

    /// <summary>The element of a common. One that all cables of a place have there is passed by no current between stations of two of them: -1.</summary>
    private int Common(Suspect suspect)
    {
        if (!suspect.Seat.IsForAll)
        {
            return suspect.Seat.Beyond == suspect.Place && suspect.Place is not null ? -1 : Commons.GetValueOrDefault(suspect.Leg!.Value, -1);
        }

        var there = Commons.Where(c => c.Key.To == suspect.Place).Take(2).ToList();
        return there is [var only] ? only.Value : -1;
    }

    public CoilSlots? Coil(Suspect suspect) => Coils.TryGetValue((suspect.Station!, suspect.Place!), out var slots) ? slots : null;

    /// <summary>The coils that lie farther on where the suspect's coil does, or its whole cable goes on.</summary>
    public IEnumerable<CoilSlots> CoilsBehind(Suspect suspect) => suspect.Fault.Scope == FaultScope.Run
        ? from path in Setup.Paths
          let valve = path.ValveBeyond(suspect.Leg!.Value)
          where valve >= 0
          select Coils[(path.Station, path.Valves[valve].Place)]
        : Coil(suspect) is { } coil ? [coil] : [];

    public LegSlots? Slots(Suspect suspect) =>
        suspect is { Station: { } station, Leg: { } leg } && Legs.TryGetValue((station, leg), out var slots) ? slots : null;
}
