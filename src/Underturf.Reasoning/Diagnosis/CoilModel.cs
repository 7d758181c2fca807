using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>The coil as the circuit needs it: ohms, reactance, and how its ohms hang on the property's usual coil.</summary>
/// <param name="OnLevel">True where its ohms follow the property's usual coil; false where ohms were noted for it.</param>
internal readonly record struct CoilModel(double Ohms, bool OnLevel, double LogSpread)
{
    public static CoilModel Of(double? notedOhms, PracticeBook book) => notedOhms is { } ohms
        ? new CoilModel(ohms, false, book.Coil.Noted)
        : new CoilModel(book.Coil.Ohms, true, book.Coil.Differ);
}
