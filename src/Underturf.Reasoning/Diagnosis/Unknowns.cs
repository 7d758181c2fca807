using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// Numbers the unknowns that the readings of one controller share: the property's usual coil, the soil's temperature, the supply's volts, the
/// bias of each instrument, the length of each stretch of cable, the coils of each box and each coil by itself. All but the first are counted in their own standard deviations.
/// </summary>
internal sealed class Unknowns(PracticeBook book)
{
    /// <summary>Logarithm of the usual coil's ohms against the practice book's.</summary>
    public const int Level = 0;

    public const int Soil = 1;

    public const int Supply = 2;

    private const int FirstBias = 3;

    private readonly Dictionary<LegKey, int> legs = [];
    private readonly Dictionary<string, int> batches = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> coils = new(StringComparer.Ordinal);

    public int Count => FirstBias + book.Instruments.Count + legs.Count + batches.Count + coils.Count;

    public int Bias(InstrumentPractice instrument)
    {
        for (var i = 0; i < book.Instruments.Count; i++)
        {
            if (book.Instruments[i] == instrument)
            {
                return FirstBias + i;
            }
        }

        throw new ArgumentException($"'{instrument.Name}' is no instrument of the practice book.", nameof(instrument));
    }

    /// <summary>Numbers all that a station's path brings.</summary>
    public void Take(StationPath path)
    {
        foreach (var leg in path.Legs)
        {
            Length(leg.Key);
        }

        foreach (var valve in path.Valves)
        {
            Batch(valve.Place);
            Coil(valve.Coil);
        }
    }

    public int Length(LegKey leg)
    {
        if (!legs.TryGetValue(leg, out var index))
        {
            index = Count;
            legs[leg] = index;
        }

        return index;
    }

    /// <summary>Coils that sit in one place were bought together.</summary>
    public int Batch(string place) => Number(batches, place);

    /// <summary>What a coil has of its own is the same in every reading of it.</summary>
    public int Coil(string name) => Number(coils, name);

    private int Number(Dictionary<string, int> known, string name)
    {
        if (!known.TryGetValue(name, out var index))
        {
            index = Count;
            known[name] = index;
        }

        return index;
    }
}
