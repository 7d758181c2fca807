namespace Underturf.Reasoning.Diagnosis;

/// <summary>What is not known exactly about an element of a circuit.</summary>
internal enum PartKind
{
    /// <summary>Copper: its length is not known well and its ohms follow the soil's temperature.</summary>
    Wire,

    /// <summary>A coil whose ohms follow the property's usual coil.</summary>
    LevelCoil,

    /// <summary>Anything else.</summary>
    Other,
}

/// <summary>A share of an element's ohms that is not known exactly.</summary>
/// <param name="Length">The number of the length that it hangs on among the unknowns; -1 where it varies alone.</param>
/// <param name="LogSpread">Standard deviation of the logarithm of its ohms.</param>
/// <param name="Batch">For a coil the number of its box's coils among the unknowns; -1 where it has none.</param>
internal readonly record struct Part(int Element, PartKind Kind, int Length, double Ohms, double LogSpread, int Batch = -1);
