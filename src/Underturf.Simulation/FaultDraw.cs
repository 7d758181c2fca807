using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation;

/// <summary>
/// Draws faults for a made-up property in proportion to the practice book's rates: each on a station of its own, at most one shared, and none on
/// a station that an open common or sensor cuts off: it would show nothing, and nobody could ask about it before the common is whole.
/// </summary>
internal sealed class FaultDraw(PracticeBook book, SeededGenerator chance, IReadOnlyList<StationPath> paths)
{
    private readonly HashSet<string> taken = new(StringComparer.Ordinal);

    public IReadOnlyList<TrueFault> Draw(int count)
    {
        var faults = new List<TrueFault>();
        while (faults.Count < count)
        {
            var shared = faults.Exists(f => f.Station is null);
            var seats = book.Faults.SelectMany(Seats).Where(s => s.Fault.Station is null ? !shared : !taken.Contains(s.Fault.Station)).Where(s => !Hides(s.Fault, faults)).ToList();
            if (seats.Count == 0)
            {
                break;
            }

            var drawn = seats[chance.Choose([.. seats.Select(s => s.Weight)])].Fault;
            faults.Add(drawn);
            taken.UnionWith(new[] { drawn.Station, drawn.Other }.OfType<string>());
        }

        return faults;
    }

    private bool Hides(TrueFault drawn, List<TrueFault> faults) => faults.Exists(f => CutsOff(drawn, f) || CutsOff(f, drawn));

    private bool CutsOff(TrueFault shared, TrueFault other) => shared.Station is null
        && book.Faults.First(f => f.Id == shared.Fault).Open
        && paths.Any(p => (p.Station == other.Station || p.Station == other.Other) && (shared.Place is null || p.LegTo(shared.Place) >= 0));

    private IEnumerable<(TrueFault Fault, double Weight)> Seats(FaultPractice fault) => fault.Scope switch
    {
        FaultScope.Conductor or FaultScope.Splice or FaultScope.Branch =>
            from path in paths
            from leg in path.Legs
            select (Seat(fault, path.Station, null, leg.To), fault.Rate / (fault.Scope == FaultScope.Branch ? path.Legs.Count : 1)),
        FaultScope.Coil or FaultScope.Station =>
            from path in paths
            select (Seat(fault, path.Station, null, fault.Scope == FaultScope.Coil ? path.Valves[0].Place : null), fault.Rate),
        FaultScope.Pair =>
            from a in paths
            from b in paths
            where string.CompareOrdinal(a.Station, b.Station) < 0
            let leg = a.LastMeeting(b)
            where leg is not null
            select (Seat(fault, a.Station, b.Station, leg.To), fault.Rate / (paths.Count - 1)),
        FaultScope.CommonConductor or FaultScope.CommonSplice =>
            from leg in paths.SelectMany(p => p.Legs).DistinctBy(l => l.To)
            select (Seat(fault, null, null, leg.To), fault.Rate),
        FaultScope.Sensor or FaultScope.Supply or FaultScope.Everywhere => [(Seat(fault, null, null, null), fault.Rate)],
        _ => [],
    };

    private TrueFault Seat(FaultPractice fault, string? station, string? other, string? place)
    {
        var amount = fault.Unknown is not { } spread ? 0 : new LogNormal(spread.Median, spread.LogSpread).Quantile(0.02 + (0.96 * chance.NextDouble()));
        var more = fault.MoreCoils is { } onward ? 1 + (chance.NextDouble() < onward ? 1 : 0) : 0;
        var places = fault.ExtraPlaces ? Math.Max(1, more) : 0;
        return new TrueFault(fault.Id, station, other, place, amount, more, [.. Enumerable.Range(1, places).Select(i => $"another place {i}")]);
    }
}
