using System.Runtime.InteropServices;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>A station's feeder as it is measured, changed by suspects. One is used again and again.</summary>
internal sealed class FeederVariation(StationFeeder feeder) : IFaultyCircuit
{
    /// <summary>Leads joined by hand: far below any meter's step.</summary>
    private const double JointOhms = 1e-9;

    private readonly List<FeederLoad> loads = [];
    private readonly List<Extra> extras = [];
    private int current = -1;

    /// <summary>Ohms put in series with a leg: what is not known of them.</summary>
    /// <param name="Suspect">Which suspect put it there.</param>
    /// <param name="LogSpread">Of what stays the same from one reading to the next.</param>
    /// <param name="Drift">Of what does not.</param>
    internal readonly record struct Extra(int Suspect, int Leg, double Ohms, double LogSpread, double Drift, bool IsLevel);

    public Measure Measures { get; private set; }

    /// <summary>The leg at whose far end one stands; -1 at the controller.</summary>
    public int Stand { get; private set; }

    public int Valve { get; private set; }

    public bool IsInrush { get; private set; }

    public bool IsTouched { get; private set; }

    public bool IsFed => Measures.IsFed();

    public bool IsEarthed => Measures == Measure.EarthOhms;

    public bool IsReversed => Measures == Measure.ReversedOhms;

    public bool IsOnOtherCommon => Measures == Measure.OtherCommonOhms;

    /// <summary>Loop ohms of each leg; of the conductor alone where one measures to earth.</summary>
    public double[] Series { get; } = new double[feeder.Path.Legs.Count];

    /// <summary>Coils in series with each leg, for their reactance.</summary>
    public int[] SeriesCoils { get; } = new int[feeder.Path.Legs.Count];

    public bool[] Parted { get; } = new bool[feeder.Path.Legs.Count];

    /// <summary>The way from the controller to the field common is open.</summary>
    public bool IsCutOff { get; private set; }

    public double SourceOhms { get; private set; }

    /// <summary>Ohms of the source that are not known, their spread, and which suspect put them there.</summary>
    public (double Ohms, double LogSpread, int Suspect) Weakness { get; private set; }

    /// <summary>What the meter shows of a sine's amount, half waves passing; nothing where only sines do.</summary>
    public Spread? HalfWave { get; private set; }

    /// <summary>Which suspect sits somewhere inside the stretch that is cut; -1 for none.</summary>
    public int Inside { get; private set; }

    /// <summary>How many suspects there are.</summary>
    public int Suspects { get; private set; }

    public ReadOnlySpan<FeederLoad> Loads => CollectionsMarshal.AsSpan(loads);

    public ReadOnlySpan<Extra> Extras => CollectionsMarshal.AsSpan(extras);

    /// <summary>What follows is this suspect's doing.</summary>
    public void Begin(int which) => current = which;

    public void Reset(Measure measures, string? place, bool inrush, int suspects)
    {
        (Measures, IsInrush, IsTouched, IsCutOff, Weakness) = (measures, inrush, false, measures == Measure.OtherCommonOhms, (0, 0, -1));
        HalfWave = null;
        (Suspects, Inside) = (suspects, -1);
        Stand = measures == Measure.OutwardOhms ? feeder.Path.LegTo(place!) : -1;
        Valve = feeder.ValveAt(place);
        SourceOhms = feeder.Supply.Ohms;
        loads.Clear();
        extras.Clear();
        var splice = feeder.Book.Wire.SoundSpliceOhms;
        for (var i = 0; i < Series.Length; i++)
        {
            Series[i] = IsEarthed ? feeder.ConductorCopper[i] + splice : feeder.ConductorCopper[i] + feeder.CommonCopper[i] + (2 * splice);
            (Parted[i], SeriesCoils[i]) = (false, 0);
        }

        if (IsEarthed)
        {
            foreach (var end in feeder.Ends)
            {
                loads.Add(new FeederLoad { Node = end, CoilOhms = feeder.Book.Wire.SoundLeakOhms, CoilSpread = feeder.Book.Wire.SoundLeakSpread });
            }

            return;
        }

        for (var v = 0; v < feeder.Coils.Length; v++)
        {
            loads.Add(measures == Measure.JoinedOhms && v == Valve ? new FeederLoad { Node = feeder.Coils[v].Node, CoilOhms = JointOhms } : feeder.Coils[v]);
        }
    }

    public void Break(Suspect suspect)
    {
        if (suspect.Fault.Scope == FaultScope.Sensor)
        {
            (IsCutOff, IsTouched) = (Stand < 0 && !IsEarthed, true);
        }
        else if (suspect.Fault.Scope == FaultScope.Coil)
        {
            if (CoilOf(suspect) is var load and >= 0)
            {
                loads[load] = loads[load] with { CoilOhms = double.PositiveInfinity };
                IsTouched = true;
            }
        }
        else if (SeriesLeg(suspect) is var leg and >= 0)
        {
            Parted[leg] = IsTouched = true;
        }
    }

    /// <summary>As far from the other common as from its own.</summary>
    public void JoinOther() => (IsCutOff, IsTouched) = (false, true);

    public void AddSeries(Suspect suspect, double ohms) => Add(suspect, ohms, suspect.AmountLogSpread, suspect.Fault.Drift, false);

    public void AddCoils(Suspect suspect, int count)
    {
        if (Add(suspect, count * feeder.Book.Coil.Ohms, CoilModel.UnseenSpread(feeder.Book, count), 0, true) is var leg and >= 0)
        {
            SeriesCoils[leg] += count;
        }
    }

    /// <summary>Shorted turns are a shunt that leaves the coil this share of its ohms, at any frequency.</summary>
    public void ShortTurns(Suspect suspect, double share, double logSpread)
    {
        if (CoilOf(suspect) is var load and >= 0 && double.IsFinite(loads[load].CoilOhms))
        {
            loads[load] = loads[load] with { ShuntOhms = loads[load].CoilOhms * share / (1 - share), ShuntSpread = logSpread, Suspect = current };
            IsTouched = true;
        }
    }

    public void ScaleCoil(Suspect suspect, double ratio, double logSpread)
    {
        if (CoilOf(suspect) is var load and >= 0 && double.IsFinite(loads[load].CoilOhms))
        {
            loads[load] = loads[load] with { CoilOhms = loads[load].CoilOhms * ratio, RatioSpread = logSpread, Suspect = current };
            IsTouched = true;
        }
    }

    public void ScaleRun(Suspect suspect, double ratio, double logSpread)
    {
        var last = feeder.LegOf(suspect);
        for (var leg = last > 0 && last - 1 == feeder.Cut ? feeder.Cut : last; leg >= 0 && leg <= last; leg++)
        {
            var copper = feeder.ConductorCopper[leg] + (IsEarthed ? 0 : feeder.CommonCopper[leg]);
            Series[leg] += (ratio - 1) * copper;
            extras.Add(new Extra(current, leg, ratio * copper, logSpread, 0, false));
            IsTouched = true;
        }
    }

    /// <summary>To earth and at the freed coil a longer wire shows nothing.</summary>
    public void MoveOn(Suspect suspect, double metres, double logSpread)
    {
        var load = IsEarthed || Measures == Measure.CoilOhms ? -1
            : suspect.Fault.Scope == FaultScope.Run ? feeder.Path.ValveBeyond(suspect.Leg!.Value)
            : ValveOf(suspect);
        if (load >= 0)
        {
            loads[load] = loads[load].Behind(BenchLayout.FurtherWireOhms(feeder.Book, metres), logSpread, current);
            IsTouched = true;
        }
    }

    /// <summary>At the far end the leak is all that counts of the insulation.</summary>
    public void Leak(Suspect suspect, double ohms, double logSpread)
    {
        if (IsEarthed && feeder.LegOf(suspect) is var leg and >= 0)
        {
            loads.RemoveAll(l => l.Node == leg && feeder.Ends.Contains(leg));
            loads.Add(new FeederLoad { Node = leg, CoilOhms = ohms, CoilSpread = logSpread, Suspect = current });
            IsTouched = true;
        }
    }

    public void TouchCommon(Suspect suspect, double ohms, double logSpread)
    {
        if (!IsEarthed && NodeOf(suspect) is var node and >= 0)
        {
            loads.Add(new FeederLoad { Node = node, CoilOhms = ohms, CoilSpread = logSpread, Suspect = current });
            IsTouched = true;
        }
    }

    /// <summary>So many like coils side by side, each on its own stretch of wire, are one with so many times less ohms.</summary>
    public void Branch(Suspect suspect, int count)
    {
        if (IsEarthed || NodeOf(suspect) is not (var node and >= 0))
        {
            return;
        }

        var book = feeder.Book;
        loads.Add(new FeederLoad
        {
            Node = node,
            WireOhms = BenchLayout.BranchWireOhms(book) / count,
            WireSpread = book.Wire.BranchSpread / Math.Sqrt(count),
            CoilOhms = book.Coil.Ohms / count,
            CoilSpread = CoilModel.UnseenSpread(book, count),
            IsLevel = true,
            IsCoil = true,
            Count = count,
            Suspect = current,
        });
        IsTouched = true;
    }

    /// <summary>The other's valves are in the feeder already; where they hang in a cut stretch is not known.</summary>
    public void Join()
    {
        if (feeder.Cut >= 0)
        {
            (Inside, IsTouched) = (current, true);
        }
    }

    public void Rectify(Suspect suspect)
    {
        HalfWave ??= HalfWaves.Shown(suspect, Measures, IsInrush, feeder.Path, Valve);
        IsTouched |= HalfWave is not null;
    }

    public void WeakenSupply(double ohms, double logSpread)
    {
        if (IsFed)
        {
            (SourceOhms, Weakness, IsTouched) = (SourceOhms + ohms, (ohms, logSpread, current), true);
        }
    }

    /// <returns>The leg in which the ohms lie; -1 where they lie elsewhere.</returns>
    private int Add(Suspect suspect, double ohms, double logSpread, double drift, bool isLevel)
    {
        var leg = SeriesLeg(suspect);
        if (leg >= 0)
        {
            Series[leg] += ohms;
            extras.Add(new Extra(current, leg, ohms, logSpread, drift, isLevel));
            IsTouched = true;
        }

        return leg;
    }

    /// <summary>The leg in whose loop the suspect's ohms or break would lie; a fault of the common does not show to earth.</summary>
    private int SeriesLeg(Suspect suspect) => suspect.Fault.Scope switch
    {
        FaultScope.Branch => NodeOf(suspect),
        FaultScope.Conductor or FaultScope.Splice => feeder.LegOf(suspect),
        FaultScope.CommonConductor or FaultScope.CommonSplice when !IsEarthed => feeder.LegOf(suspect),
        _ => -1,
    };

    /// <summary>The leg at whose far end the suspect sits; what sits inside a stretch, between its two halves. -1 where it lies elsewhere.</summary>
    private int NodeOf(Suspect suspect)
    {
        var leg = feeder.LegOf(suspect);
        if (!suspect.IsInside || leg <= 0 || leg - 1 != feeder.Cut)
        {
            return leg;
        }

        Inside = current;
        return feeder.Cut;
    }

    /// <summary>The load of the suspect's coil; -1 where it lies elsewhere or its leads are joined.</summary>
    private int CoilOf(Suspect suspect) => ValveOf(suspect) is var valve && Measures == Measure.JoinedOhms && valve == Valve ? -1 : valve;

    private int ValveOf(Suspect suspect)
    {
        var valve = IsEarthed || suspect.Station != feeder.Path.Station ? -1 : feeder.Coils.Length - 1;
        while (valve >= 0 && feeder.Path.Valves[valve].Place != suspect.Place)
        {
            valve--;
        }

        return valve;
    }
}
