using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>Where a device says it is, in WGS 84; two times in three no farther off than its accuracy.</summary>
public sealed record Fix(double LatitudeDegrees, double LongitudeDegrees, double AccuracyMetres);

/// <summary>What a page asks of the device about where it is.</summary>
public interface IWhereabouts
{
    /// <summary>Asks once; the user may have to allow it.</summary>
    Task<Outcome<Fix>> FindAsync();
}
