using CsCheck;
using Underturf.Planning.Day.Ordering;

namespace Underturf.Tests.Planning.Day;

/// <summary>Invented days, small enough to try every order of every choice of jobs.</summary>
internal static class RandomDays
{
    public static Gen<ErrandDay> Small { get; } = Of(Gen.Int[1, 6]);

    public static Gen<ErrandDay> Of(Gen<int> errands) => errands.SelectMany(count =>
        Gen.Select(Errands(count), Gen.Double[0, 30].Array[count], Gen.Double[0, 30].Array2D[count, count], Gen.Double[0, 12].Array[count], Gen.Double[30, 300], Gen.Double[50, 900])
            .Select(d => new ErrandDay(d.Item1, d.Item2, d.Item3, d.Item4, d.Item5, d.Item6)));

    /// <summary>The most that any order saves, by going through all of them.</summary>
    public static double Most(ErrandDay day) => Orders(day.Errands.Count, []).Max(o => day.Value(o) ?? double.NegativeInfinity);

    /// <summary>Every order of every subset.</summary>
    private static IEnumerable<IReadOnlyList<int>> Orders(int count, IReadOnlyList<int> begun)
    {
        yield return begun;
        foreach (var order in Enumerable.Range(0, count).Except(begun).SelectMany(next => Orders(count, [.. begun, next])))
        {
            yield return order;
        }
    }

    /// <summary>Some wait for an earlier one, some cannot follow one, some may be begun only for a time.</summary>
    private static Gen<IReadOnlyList<Errand>> Errands(int count) =>
        Gen.Select(Gen.Double[1, 60], Gen.Double[0, 200], Gen.Int[0, 3], Gen.Int[0, count - 1], Gen.Double[0, 90], Gen.Double[5, 200])
            .Array[count]
            .Select(all => (IReadOnlyList<Errand>)[.. all.Select((e, k) => new Errand(
                e.Item1,
                e.Item2,
                e.Item3 == 1 && e.Item4 < k ? [e.Item4] : [],
                e.Item3 == 2 && e.Item4 != k ? [e.Item4] : [],
                e.Item3 == 3 ? e.Item5 : 0,
                e.Item3 == 3 ? e.Item5 + e.Item6 : double.PositiveInfinity))]);
}
