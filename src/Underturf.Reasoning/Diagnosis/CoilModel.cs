using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>The coil as the circuit needs it: ohms, reactance, and how its ohms hang on the property's usual coil.</summary>
/// <param name="OnLevel">True where its ohms follow the property's usual coil; false where ohms were noted for it.</param>
internal readonly record struct CoilModel(double Ohms, bool OnLevel, double LogSpread)
{
    public static CoilModel Of(double? notedOhms, PracticeBook book) => notedOhms is { } ohms
        ? new CoilModel(ohms, false, book.Coil.Noted)
        : new CoilModel(book.Coil.Ohms, true, book.Coil.Differ);

    /// <summary>Spread of coils side by side or in a row that nobody has seen: of another batch, and each by itself.</summary>
    public static double UnseenSpread(PracticeBook book, int count) => double.Hypot(book.Coil.BatchSpread, book.Coil.Differ / Math.Sqrt(count));

    /// <summary>Ohms of reactance at a supply's frequency: the book gives them at its own.</summary>
    public static double ReactanceOhms(PracticeBook book, double hertz, bool inrush) =>
        (inrush ? book.Coil.InrushReactanceOhms : book.Coil.HoldingReactanceOhms) * hertz / book.Supply.Hertz;

    /// <summary>Henries of a coil.</summary>
    public static double Henries(PracticeBook book, bool inrush) => ReactanceOhms(book, 1, inrush) / (2 * Math.PI);
}
