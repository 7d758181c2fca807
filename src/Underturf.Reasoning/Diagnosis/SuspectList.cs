using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Sets every fault of the practice book on every part where it can sit.</summary>
internal sealed class SuspectList(PracticeBook book, IReadOnlyList<StationPath> paths)
{
    private const int MostCoils = 5;

    /// <summary>Counts of coils rarer than this share of their fault are left out; that bounds what is lost by it.</summary>
    private const double LeastShare = 1e-3;

    /// <summary>By controller, so that the same fault is the same suspect wherever it is asked for.</summary>
    private readonly Dictionary<string, IReadOnlyList<SuspectFamily>> shared = new(StringComparer.Ordinal);

    /// <summary>What can be wrong with one station alone: for each fault at each place its amounts, the smallest first.</summary>
    public IReadOnlyList<SuspectFamily> Private(StationPath path) =>
        [.. book.Faults.SelectMany(f => PrivateSeats(f, path)).Select(seat => new SuspectFamily(seat))];

    /// <summary>What can be wrong with the common, the sensor in it, the supply, or everywhere.</summary>
    public IReadOnlyList<SuspectFamily> Shared(string controller) => shared.TryGetValue(controller, out var known) ? known
        : shared[controller] = [.. book.Faults.SelectMany(f => SharedSeats(f, controller)).Select(seat => new SuspectFamily(seat))];

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
                    if (!isAsked(here[i].Station) && !isAsked(here[j].Station))
                    {
                        continue;
                    }

                    var meeting = here[i].LastMeeting(here[j]);
                    var rate = fault.Rate / (here.Count - 1);
                    if (fault.Swaps && (meeting is not null || here[i].Guessed || here[j].Guessed))
                    {
                        // Wherever two conductors are swapped, it is cured at the terminals: the place says nothing.
                        yield return Suspect.Of(new SuspectSeat(fault, here[i].Station) { Other = here[j].Station }, rate);
                    }
                    else if (!fault.Swaps && meeting is not null)
                    {
                        foreach (var suspect in Crossed(fault, here[i], here[j], meeting, rate))
                        {
                            yield return suspect;
                        }
                    }
                }
            }
        }
    }

    private IEnumerable<Suspect> PrivateSeats(FaultPractice fault, StationPath path) => fault.Scope switch
    {
        FaultScope.Conductor or FaultScope.Splice => path.Legs.Select(leg => OnLeg(fault, path, leg, fault.Rate)).SelectMany(Commons),
        FaultScope.Branch => path.Legs
            .Select(leg => new SuspectSeat(fault, path.Station, leg.Key, leg.To))
            .SelectMany(seat => fault.DcSeriesOhms is null && !path.Guessed ? Boxes(seat, seat, fault.Rate / path.Legs.Count) : [Suspect.Of(seat, fault.Rate / path.Legs.Count)])
            .SelectMany(seat => Whole(seat).SelectMany(Branches).Concat(OneWay(seat))),
        FaultScope.Coil => path.Valves.Where(v => fault.MoreMetres is null || path.MayLieOn(v)).Select(v => OnLeg(fault, path, path.Legs[v.Leg], fault.Rate)),
        FaultScope.Station => [Suspect.Of(new SuspectSeat(fault, path.Station, Place: path.Valves[0].Place), fault.Rate)],
        FaultScope.Unmodelled => [Suspect.Of(new SuspectSeat(fault, path.Station), fault.Rate)],
        _ => [],
    };

    private IEnumerable<Suspect> SharedSeats(FaultPractice fault, string controller) => fault.Scope switch
    {
        FaultScope.CommonConductor or FaultScope.CommonSplice => paths
            .Where(p => p.Controller == controller)
            .SelectMany(p => p.Legs.Select(l => (Leg: l, p.Common)))
            .DistinctBy(l => (l.Leg.Id, l.Leg.To, l.Common))
            .GroupBy(l => (l.Leg.To, l.Common))
            .SelectMany(cables => OfCommon(fault, [.. cables.Select(c => new SuspectSeat(fault, Leg: c.Leg.Key, Place: c.Leg.To) { Common = c.Common })])
                .Concat(fault.Scope == FaultScope.CommonSplice ? cables.SelectMany(c => Unfound(fault, c.Leg, c.Common)) : [])),
        FaultScope.Run => paths
            .Where(p => p.Controller == controller)
            .SelectMany(p => p.Legs.Select(l => (Path: p, Leg: l)))
            .GroupBy(l => l.Leg.Key)
            .Where(l => fault.MoreMetres is null || l.Count(p => p.Path.ValveBeyond(l.Key) >= 0) > 1)
            .Select(l => Suspect.Of(new SuspectSeat(fault, Leg: l.Key, Place: l.Key.To), fault.Rate)),
        FaultScope.Sensor or FaultScope.Supply or FaultScope.Everywhere =>
            [Suspect.Of(new SuspectSeat(fault, Place: fault.Scope == FaultScope.Everywhere ? null : controller), fault.Rate)],
        _ => [],
    };

    /// <summary>On the common of each cable that ends in a place, or on the one that all of them have there.</summary>
    private IEnumerable<Suspect> OfCommon(FaultPractice fault, IReadOnlyList<SuspectSeat> cables)
    {
        var one = cables.Count > 1 ? book.Wire.CommonForAll : 0;
        var seats = cables.Select(c => (Seat: c, Rate: fault.Rate * (1 - one))).Append((Seat: cables[0] with { IsForAll = true }, Rate: fault.Rate * one));
        return seats.Where(s => s.Rate > 0).Select(s => Suspect.Of(s.Seat, s.Rate));
    }

    /// <summary>
    /// On the common in a box that nobody has found, inside a stretch or beyond its end: only where stations were followed no farther than to the place before it, for
    /// else it reads like one at the end of the stretch.
    /// </summary>
    private IEnumerable<Suspect> Unfound(FaultPractice fault, Leg leg, string? common)
    {
        int EndAt(string place) => paths.Count(p => p.Common == common && p.LegBefore(place) >= 0);
        var seat = new SuspectSeat(fault, Leg: leg.Key, Place: leg.To) { Common = common, IsUnfound = true };
        var rate = fault.Rate * book.Wire.UnfoundBox;
        if (EndAt(leg.From) > 0)
        {
            yield return Suspect.Of(seat with { Beyond = leg.From }, rate);
        }

        if (EndAt(leg.To) > 1)
        {
            yield return Suspect.Of(seat with { Beyond = leg.To }, rate);
        }
    }

    /// <summary>Where two stations meet for the last time, or in a box that nobody has found on the stretches by which both go on.</summary>
    private IEnumerable<Suspect> Crossed(FaultPractice fault, StationPath one, StationPath other, Leg meeting, double rate)
    {
        var seat = new SuspectSeat(fault, one.Station, meeting.Key, meeting.To) { Other = other.Station };
        return JoinedPath.GoesOn(one, other, meeting.To) is { } onward ? Boxes(seat, seat with { Leg = onward.Key, Place = onward.To }, rate) : [Suspect.Of(seat, rate)];
    }

    /// <summary>A box that is known, and one inside a stretch that nobody has found.</summary>
    private IEnumerable<Suspect> Boxes(SuspectSeat known, SuspectSeat inside, double rate)
    {
        var unfound = book.Wire.UnfoundBox;
        yield return Suspect.Of(known, rate / (1 + unfound));
        yield return Suspect.Of(inside with { IsUnfound = true }, rate * unfound / (1 + unfound));
    }

    /// <summary>What hangs on another common: on one of the same controller, or on one that leads elsewhere.</summary>
    private static IEnumerable<Suspect> Commons(Suspect seat) => seat.Fault.OtherLive <= 0 ? [seat] :
    [
        new Suspect { Seat = seat.Seat with { IsLive = true }, Weight = seat.Weight * seat.Fault.OtherLive },
        .. seat.Fault.OtherLive < 1 ? new[] { seat with { Weight = seat.Weight * (1 - seat.Fault.OtherLive) } } : [],
    ];

    private static Suspect OnLeg(FaultPractice fault, StationPath path, Leg leg, double rate) => Suspect.Of(new SuspectSeat(fault, path.Station, leg.Key, leg.To), rate);

    private static IEnumerable<Suspect> Branches(Suspect seat)
    {
        var onward = seat.Fault.MoreCoils ?? 0;
        for (var more = 1; more <= MostCoils; more++)
        {
            // The last count stands for itself and all above it.
            var share = Math.Pow(onward, more - 1) * (more == MostCoils ? 1 : 1 - onward);
            if (share > LeastShare)
            {
                yield return new Suspect { Seat = seat.Seat with { MoreCoils = more }, Weight = seat.Weight * share };
            }
        }
    }

    /// <summary>What has diodes as it was made, and with one lost; anything else as it is.</summary>
    private static IEnumerable<Suspect> Whole(Suspect seat)
    {
        var fault = seat.Fault;
        if (fault.DcSeriesOhms is null)
        {
            return [seat];
        }

        Suspect[] states =
        [
            seat with { Weight = seat.Weight * Math.Max(0, 1 - fault.OneWay - fault.LostDiode) },
            new Suspect { Seat = seat.Seat with { Passes = Passes.All }, Weight = seat.Weight * fault.LostDiode },
        ];
        return states.Where(s => s.Weight > 0);
    }

    /// <summary>What has diodes where one half of the wave is blocked: no further valve works.</summary>
    private static IEnumerable<Suspect> OneWay(Suspect seat)
    {
        var weight = seat.Weight * seat.Fault.OneWay / 2;
        return seat.Fault.DcSeriesOhms is null || weight <= 0 ? []
            : from passes in new[] { Passes.Forward, Passes.Backward } select new Suspect { Seat = seat.Seat with { Passes = passes }, Weight = weight };
    }
}
