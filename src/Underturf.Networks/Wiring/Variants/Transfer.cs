namespace Underturf.Networks.Wiring;

/// <summary>
/// Volts between two nodes for each ampere sent in between two nodes. Where both pairs are the same it is what an ohmmeter reads.
/// </summary>
/// <param name="DriveA">Node that the current enters by.</param>
/// <param name="DriveB">Node that it leaves by.</param>
/// <param name="SenseA">Node whose volts are read, over those of <paramref name="SenseB"/>.</param>
public readonly record struct Transfer(int DriveA, int DriveB, int SenseA, int SenseB)
{
    /// <summary>An ohmmeter between two nodes.</summary>
    public static Transfer Ohms(int a, int b) => new(a, b, a, b);
}
