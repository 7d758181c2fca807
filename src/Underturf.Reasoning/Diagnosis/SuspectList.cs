using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Sets every fault of the practice book on every part where it can sit.</summary>
internal sealed class SuspectList(PracticeBook book, IReadOnlyList<StationPath> paths)
{
    private const int MostCoils = 5;

    /// <summary>Counts of coils rarer than this share of their fault are left out; that bounds what is lost by it.</summary>
    private const double LeastShare = 1e-3;

    /// <summary>What can be wrong with one station alone.</summary>
    public IReadOnlyList<Suspect> Private(StationPath path) =>
        [.. book.Faults.SelectMany(f => PrivateSeats(f, path)).SelectMany(Amounts)];

    /// <summary>What can be wrong with the common, the sensor in it, the supply, or everywhere.</summary>
    public IReadOnlyList<Suspect> Shared(string controller) =>
        [.. book.Faults.SelectMany(f => SharedSeats(f, controller)).SelectMany(Amounts)];

    /// <summary>What can be wrong between two stations of one controller that meet in a place.</summary>
    public IEnumerable<Suspect> Pairs(string controller)
    {
        var here = paths.Where(p => p.Controller == controller).ToList();
        foreach (var fault in book.Faults.Where(f => f.Scope == FaultScope.Pair))
        {
            for (var i = 0; i < here.Count; i++)
            {
                for (var j = i + 1; j < here.Count; j++)
                {
                    if (here[i].LastMeeting(here[j]) is { } leg)
                    {
                        // Wherever two conductors are swapped, it is cured at the terminals: the place says nothing.
                        yield return Seat(fault, here[i], fault.Swaps ? null : leg, fault.Rate / (here.Count - 1)) with { Other = here[j].Station };
                    }
                }
            }
        }
    }

    private static IEnumerable<Suspect> PrivateSeats(FaultPractice fault, StationPath path) => fault.Scope switch
    {
        FaultScope.Conductor or FaultScope.Splice => path.Legs.Select(leg => Seat(fault, path, leg, fault.Rate)),
        FaultScope.Branch => path.Legs.SelectMany(leg => Branches(Seat(fault, path, leg, fault.Rate / path.Legs.Count))).SelectMany(Halves),
        FaultScope.Coil => path.Valves.Select(v => Seat(fault, path, path.Legs[v.Leg], fault.Rate)),
        FaultScope.Station => [Seat(fault, path, null, fault.Rate) with { Place = path.Valves[0].Place }],
        FaultScope.Unmodelled => [Seat(fault, path, null, fault.Rate)],
        _ => [],
    };

    private IEnumerable<Suspect> SharedSeats(FaultPractice fault, string controller) => fault.Scope switch
    {
        FaultScope.CommonConductor or FaultScope.CommonSplice => paths
            .Where(p => p.Controller == controller)
            .SelectMany(p => p.Legs.Select(l => (Leg: l, p.Common)))
            .DistinctBy(l => (l.Leg.Id, l.Leg.To, l.Common))
            .Select(l => Seat(fault, null, l.Leg, fault.Rate) with { Common = l.Common }),
        FaultScope.Sensor or FaultScope.Supply or FaultScope.Everywhere =>
            [Seat(fault, null, null, fault.Rate) with { Place = fault.Scope == FaultScope.Everywhere ? null : controller }],
        _ => [],
    };

    private static Suspect Seat(FaultPractice fault, StationPath? path, Leg? leg, double rate) => new()
    {
        Fault = fault,
        Station = path?.Station,
        Leg = leg is null ? null : new LegKey(leg.Id, leg.To),
        Place = leg?.To,
        Weight = rate / (1 - rate),
    };

    private static IEnumerable<Suspect> Branches(Suspect seat)
    {
        var onward = seat.Fault!.MoreCoils ?? 0;
        for (var more = 1; more <= MostCoils; more++)
        {
            // The last count stands for itself and all above it.
            var share = Math.Pow(onward, more - 1) * (more == MostCoils ? 1 : 1 - onward);
            if (share > LeastShare)
            {
                yield return seat with { MoreCoils = more, Weight = seat.Weight * share };
            }
        }
    }

    /// <summary>What has diodes, in each state in which it may be found; where one half of the wave is blocked no further valve works.</summary>
    private static IEnumerable<Suspect> Halves(Suspect seat)
    {
        var fault = seat.Fault!;
        if (fault.DcSeriesOhms is null)
        {
            return [seat];
        }

        var oneWay = seat with { MoreCoils = 0, Weight = seat.Weight * fault.OneWay / 2 };
        Suspect[] states =
        [
            seat with { Weight = seat.Weight * Math.Max(0, 1 - fault.OneWay - fault.LostDiode) },
            oneWay with { Passes = Passes.Forward },
            oneWay with { Passes = Passes.Backward },
            seat with { Passes = Passes.All, Weight = seat.Weight * fault.LostDiode },
        ];
        return states.Where(s => s.Weight > 0);
    }

    private static IEnumerable<Suspect> Amounts(Suspect seat)
    {
        return seat.Fault!.Unknown is not { } spread || seat.Passes == Passes.All
            ? [seat]
            : Strata.Of(spread).Select(s => seat with { Amount = s.Amount, AmountLogSpread = s.LogSpread, Weight = seat.Weight * s.Share });
    }
}
