using Underturf.Numerics;

namespace Underturf.References.Tests.RandomProperties;

/// <summary>The 200 random properties of 3 to 300 coils that every kind of solution is compared on.</summary>
internal static class PropertySet
{
    internal const int Count = 200;

    /// <summary>A transient of a larger one takes the reference engine minutes.</summary>
    private const int MostCoilsWithDevices = 90;

    /// <summary>Those without half-wave devices.</summary>
    internal static IEnumerable<MixedProperty> Linear() => All().Where(p => p.Circuit.Diodes.Count == 0);

    /// <summary>Those with some, of up to tens of coils.</summary>
    internal static IEnumerable<MixedProperty> WithDevices() => All().Where(p => p.Circuit.Diodes.Count > 0);

    internal static IEnumerable<MixedProperty> All() => Enumerable.Range(0, Count).Select(n =>
    {
        var coils = 3 + (n * 297 / (Count - 1));
        var devices = n % 3 == 1 && coils <= MostCoilsWithDevices ? 1 + (coils / 12) : 0;
        return new MixedProperty(new SeededGenerator(4100).Fork($"property {n}"), coils, devices);
    });
}
