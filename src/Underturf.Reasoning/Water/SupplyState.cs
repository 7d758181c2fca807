using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>
/// A state of the supply: the faults that it has together, none, one or two of them, and whether they reach the outlets or show at the point of connection alone.
/// What each does to a quantity is multiplied.
/// </summary>
internal sealed class SupplyState
{
    private readonly WaterPractice book;

    /// <param name="sound">The state that the stations feel instead, where the faults are hidden from them.</param>
    private SupplyState(WaterPractice book, IReadOnlyList<WaterFault> faults, SupplyState? sound = null)
    {
        (this.book, Faults, Reaching, Felt) = (book, faults, sound is null ? faults : [], sound ?? this);
        LogPrior = book.Of(WaterScope.Supply).Sum(f => Math.Log(faults.Contains(f) ? f.Rate : 1 - f.Rate)) + (faults.Count == 0 ? 0 : Math.Log(sound is null ? 1 - book.SupplyHidden : book.SupplyHidden));
    }

    public IReadOnlyList<WaterFault> Faults { get; }

    /// <summary>Those that are felt at the stations: none where their own valves hold the pressure, so that all of them are alike.</summary>
    public IReadOnlyList<WaterFault> Reaching { get; }

    /// <summary>What the stations have of it: the same as of one in order where nothing reaches them.</summary>
    public SupplyState Felt { get; }

    /// <summary>ln of its probability beforehand.</summary>
    public double LogPrior { get; }

    /// <summary>Ids of the faults, or that it is as it was built.</summary>
    public string Id => Faults.Count == 0 ? "as-built" : string.Join(" + ", Faults.Select(f => f.Id));

    /// <summary>The one in order first.</summary>
    public static IReadOnlyList<SupplyState> All(WaterPractice book)
    {
        WaterFault[] faults = [.. book.Of(WaterScope.Supply)];
        var sound = new SupplyState(book, []);
        return
        [
            sound,
            .. from felt in new[] { null, sound }
               from second in Enumerable.Range(0, faults.Length)
               from first in Enumerable.Range(0, second + 1)
               select new SupplyState(book, first == second ? [faults[first]] : [faults[first], faults[second]], felt),
        ];
    }

    /// <summary>What of it is left.</summary>
    public SupplyState Without(Predicate<WaterFault> cured) => Faults.Any(f => cured(f)) ? new SupplyState(book, [.. Faults.Where(f => !cured(f))]) : this;

    /// <summary>All that its faults do to a quantity at the point of connection; null where that is nothing.</summary>
    public Spread? Factor(Func<WaterFault, Spread?> of) => Product(Faults, of);

    /// <summary>All that they do to a quantity at the stations.</summary>
    public Spread? AtStations(Func<WaterFault, Spread?> of) => Product(Reaching, of);

    private static Spread? Product(IEnumerable<WaterFault> faults, Func<WaterFault, Spread?> of) => faults.Select(of).OfType<Spread>().ToList() switch
    {
        [] => null,
        [var one] => one,
        var several => new Spread(several.Aggregate(1.0, (product, s) => product * s.Median), Math.Sqrt(several.Sum(s => s.LogSpread * s.LogSpread))),
    };
}
