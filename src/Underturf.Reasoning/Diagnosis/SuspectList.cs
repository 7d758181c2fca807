using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Sets every fault of the practice book on every part where it can sit.</summary>
internal sealed class SuspectList(PracticeBook book, IReadOnlyList<StationPath> paths)
{
    private const int MostCoils = 5;

    /// <summary>Counts of coils rarer than this share of their fault are left out; that bounds what is lost by it.</summary>
    private const double LeastShare = 1e-3;

    /// <summary>What can be wrong with one station alone: for each fault at each place its amounts, the smallest first.</summary>
    public IReadOnlyList<SuspectFamily> Private(StationPath path) =>
        [.. book.Faults.SelectMany(f => PrivateSeats(f, path)).Select(seat => new SuspectFamily(seat))];

    /// <summary>What can be wrong with the common, the sensor in it, the supply, or everywhere.</summary>
    public IReadOnlyList<SuspectFamily> Shared(string controller) =>
        [.. book.Faults.SelectMany(f => SharedSeats(f, controller)).Select(seat => new SuspectFamily(seat))];

    /// <summary>What can be wrong between two stations of one controller that meet in a place, one of them at least worth asking about. Wires that nobody noted may meet any others.</summary>
    public IEnumerable<Suspect> Pairs(string controller, Func<string, bool> isAsked)
    {
        var here = paths.Where(p => p.Controller == controller).ToList();
        foreach (var fault in book.Faults.Where(f => f.Scope == FaultScope.Pair))
        {
            for (var i = 0; i < here.Count; i++)
            {
                for (var j = i + 1; j < here.Count; j++)
                {
                    var meeting = here[i].LastMeeting(here[j]);
                    if ((isAsked(here[i].Station) || isAsked(here[j].Station)) && (meeting is not null || (fault.Swaps && (here[i].Guessed || here[j].Guessed))))
                    {
                        // Wherever two conductors are swapped, it is cured at the terminals: the place says nothing.
                        yield return Seat(fault, here[i], fault.Swaps ? null : meeting, fault.Rate / (here.Count - 1)) with { Other = here[j].Station };
                    }
                }
            }
        }
    }

    private static IEnumerable<Suspect> PrivateSeats(FaultPractice fault, StationPath path) => fault.Scope switch
    {
        FaultScope.Conductor or FaultScope.Splice => path.Legs.Select(leg => Seat(fault, path, leg, fault.Rate)),
        FaultScope.Branch => path.Legs.Select(leg => Seat(fault, path, leg, fault.Rate / path.Legs.Count)).SelectMany(seat => Whole(seat).SelectMany(Branches).Concat(OneWay(seat))),
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
        Leg = leg?.Key,
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

    /// <summary>What has diodes as it was made, and with one lost; anything else as it is.</summary>
    private static IEnumerable<Suspect> Whole(Suspect seat)
    {
        var fault = seat.Fault!;
        if (fault.DcSeriesOhms is null)
        {
            return [seat];
        }

        Suspect[] states =
        [
            seat with { Weight = seat.Weight * Math.Max(0, 1 - fault.OneWay - fault.LostDiode) },
            seat with { Passes = Passes.All, Weight = seat.Weight * fault.LostDiode },
        ];
        return states.Where(s => s.Weight > 0);
    }

    /// <summary>What has diodes where one half of the wave is blocked: no further valve works.</summary>
    private static IEnumerable<Suspect> OneWay(Suspect seat)
    {
        var half = seat with { Weight = seat.Weight * seat.Fault!.OneWay / 2 };
        return seat.Fault.DcSeriesOhms is null || half.Weight <= 0 ? [] : [half with { Passes = Passes.Forward }, half with { Passes = Passes.Backward }];
    }
}
