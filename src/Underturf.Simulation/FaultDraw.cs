using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation;

/// <summary>
/// Draws faults for a made-up property in proportion to the practice book's rates: each on a station of its own, at most one shared, and none on
/// a station that an open common or sensor cuts off: it would show nothing, and nobody could ask about it before the common is whole.
/// In a whole property old phases have more than their rate, and now and then a station has two.
/// </summary>
internal sealed class FaultDraw
{
    private readonly PracticeBook book;
    private readonly SeededGenerator chance;
    private readonly SeededGenerator doubles;
    private readonly IReadOnlyList<StationPath> paths;
    private readonly FaultSetting? setting;
    private readonly List<(StationPath A, StationPath B, Leg Leg)> pairs;
    private readonly List<TrueFault> faults = [];
    private readonly HashSet<string> taken = new(StringComparer.Ordinal);

    /// <param name="setting">Of a whole property; nothing for a small one.</param>
    public FaultDraw(PracticeBook book, SeededGenerator chance, IReadOnlyList<StationPath> paths, FaultSetting? setting)
    {
        this.book = book;
        this.chance = chance;
        this.paths = paths;
        this.setting = setting;
        doubles = chance.Fork("two on one station");
        pairs =
        [
            .. from a in paths
               from b in paths
               where string.CompareOrdinal(a.Station, b.Station) < 0
               let leg = a.LastMeeting(b)
               where leg is not null
               select (a, b, leg),
        ];
    }

    public IReadOnlyList<TrueFault> Draw(int count)
    {
        while (faults.Count < count)
        {
            var second = setting is not null && taken.Count > 0 && doubles.Happens(setting.SameStationShare);
            var seats = book.Faults.Where(f => !f.AsksNothing).SelectMany(Seats).ToList();
            var free = seats.Where(s => Fits(s.Fault, second)).ToList();
            free = free.Count == 0 && second ? [.. seats.Where(s => Fits(s.Fault, false))] : free;
            if (free.Count == 0)
            {
                break;
            }

            var drawn = free[chance.Choose([.. free.Select(s => s.Weight)])].Fault;
            faults.Add(drawn);
            taken.UnionWith(new[] { drawn.Station, drawn.Other }.OfType<string>());
        }

        return faults;
    }

    private bool Fits(TrueFault drawn, bool second)
    {
        if (faults.Exists(f => CutsOff(drawn, f) || CutsOff(f, drawn)))
        {
            return false;
        }

        return drawn.Station is not { } station ? !second && !faults.Exists(f => f.Station is null)
            : second ? drawn.Other is null && faults.Exists(f => f.Station == station) && faults.TrueForAll(f => f.Other != station && (f.Station != station || GoTogether(f, drawn)))
            : !taken.Contains(station) && (setting is null || drawn.Other is null || !taken.Contains(drawn.Other));
    }

    /// <summary>Two faults of one station that are two things, and neither a pair's.</summary>
    private bool GoTogether(TrueFault one, TrueFault other) =>
        one.Other is null && one.Fault != other.Fault && (Scope(one) != Scope(other) || Scope(one) is not (FaultScope.Branch or FaultScope.Coil));

    private FaultScope Scope(TrueFault fault) => book.Faults.First(f => f.Id == fault.Fault).Scope;

    private bool CutsOff(TrueFault shared, TrueFault other) => shared.Station is null
        && book.Faults.First(f => f.Id == shared.Fault).Open
        && paths.Any(p => (p.Station == other.Station || p.Station == other.Other)
            && (shared.Common is null || shared.Common == setting!.Commons[p.Station])
            && (shared.Controller is null || shared.Controller == p.Controller)
            && (shared.Place is null || p.LegTo(shared.Place) >= 0));

    private IEnumerable<(TrueFault Fault, double Weight)> Seats(FaultPractice fault) => fault.Scope switch
    {
        FaultScope.Conductor or FaultScope.Splice or FaultScope.Branch =>
            from path in paths
            from leg in path.Legs
            select (Seat(fault, path.Station, null, leg.To), Rate(fault, path.Station) / (fault.Scope == FaultScope.Branch ? path.Legs.Count : 1)),
        FaultScope.Coil or FaultScope.Station =>
            from path in paths
            select (Seat(fault, path.Station, null, fault.Scope == FaultScope.Coil ? path.Valves[0].Place : null), Rate(fault, path.Station)),
        FaultScope.Pair => pairs.Select(p => (Seat(fault, p.A.Station, p.B.Station, p.Leg.To), Rate(fault, p.A.Station) / (paths.Count - 1))),
        FaultScope.CommonConductor or FaultScope.CommonSplice => CommonSeats(fault),
        FaultScope.Sensor or FaultScope.Supply or FaultScope.Everywhere =>
            from controller in setting?.Controllers ?? [null]
            select (Seat(fault, null, null, null) with { Controller = controller }, fault.Rate),
        _ => [],
    };

    private IEnumerable<(TrueFault Fault, double Weight)> CommonSeats(FaultPractice fault) =>
        from place in paths.SelectMany(p => p.Legs.Select(l => (l.To, Common: setting?.Commons[p.Station]))).Distinct()
        select (Seat(fault, null, null, place.To) with { Common = place.Common }, fault.Rate * (setting?.TroubleAt(place.To, fault.Scope) ?? 1));

    private double Rate(FaultPractice fault, string station) => fault.Rate * (setting?.TroubleOf(station, fault.Scope) ?? 1);

    private TrueFault Seat(FaultPractice fault, string? station, string? other, string? place)
    {
        var amount = fault.Unknown is not { } spread ? 0 : new LogNormal(spread.Median, spread.LogSpread).Quantile(0.02 + (0.96 * chance.NextDouble()));
        var more = fault.MoreCoils is { } onward ? 1 + (chance.NextDouble() < onward ? 1 : 0) : 0;
        var places = fault.ExtraPlaces ? Math.Max(1, more) : 0;
        return new TrueFault(fault.Id, station, other, place, amount, more, [.. Enumerable.Range(1, places).Select(i => $"another place {i}")]);
    }
}
