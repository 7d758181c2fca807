using System.Numerics;
using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.Feeders;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Solves a station's feeder and carries what is not known to the reading by the exact slopes of the solution (docs/models/wiring.md).</summary>
internal sealed class FeederReading
{
    /// <summary>Shared unknowns of every reading: soil, supply, the instrument's bias, then the legs' lengths, the coils' batches and the coils.</summary>
    private const int FirstLength = 3;

    private readonly StationFeeder feeder;
    private readonly Unknowns unknowns;
    private readonly RadialFeeder<double> direct;
    private readonly RadialFeeder<Complex> alternating;
    private readonly double[] legSlopes;
    private readonly List<(double Coil, double Shunt, double Wire)> loadSlopes = [];
    private readonly Dictionary<(Measure, bool), (int[] Shared, double Bias)> shared = [];
    private double sourceSlope;

    public FeederReading(StationFeeder feeder, Unknowns unknowns, RadialFeeder<double> direct, RadialFeeder<Complex> alternating)
    {
        (this.feeder, this.unknowns, this.direct, this.alternating) = (feeder, unknowns, direct, alternating);
        legSlopes = new double[direct.Count];
    }

    public Prediction Of(FeederVariation work)
    {
        loadSlopes.Clear();
        Array.Clear(legSlopes);
        sourceSlope = 0;
        return work.Measures == Measure.CoilOhms ? CoilAlone(work) : work.IsFed ? Fed(work) : Dead(work);
    }

    private Prediction CoilAlone(FeederVariation work)
    {
        for (var k = 0; k < work.Loads.Length; k++)
        {
            var (_, coil, shunt) = work.Loads[k].Impedance(0);
            loadSlopes.Add(k == work.Valve ? (coil.Real, shunt.Real, 0) : default);
        }

        ref readonly var load = ref work.Loads[work.Valve];
        return load.IsOpen ? Prediction.Open(work.IsTouched) : Spread(work, load.Impedance(0).Ohms.Real);
    }

    private Prediction Dead(FeederVariation work)
    {
        for (var i = 0; i < direct.Count; i++)
        {
            (direct.Series[i], direct.Open[i], direct.Load[i]) = (work.Series[i], work.Parted[i], 0);
        }

        foreach (ref readonly var load in work.Loads)
        {
            direct.Load[load.Node] += load.IsOpen ? 0 : 1 / load.Impedance(0).Ohms.Real;
        }

        var siemens = direct.Admittance(work.Stand);
        if (siemens <= 0 || work.IsCutOff)
        {
            return Prediction.Open(work.IsTouched);
        }

        direct.Drive(work.Stand, 1 / siemens);
        for (var i = 0; i < direct.Count; i++)
        {
            legSlopes[i] = direct.Amperes[i] * direct.Amperes[i];
        }

        foreach (ref readonly var load in work.Loads)
        {
            var (ohms, coil, shunt) = load.Impedance(0);
            var slope = Square(direct.Volts[load.Node] / ohms.Real);
            loadSlopes.Add(load.IsOpen ? default : (slope * coil.Real, slope * shunt.Real, slope));
        }

        return Spread(work, 1 / siemens);
    }

    private Prediction Fed(FeederVariation work)
    {
        var (volts, source, reactance) = (feeder.Supply.Volts, work.SourceOhms, CoilModel.ReactanceOhms(feeder.Book, feeder.Supply.Hertz, work.IsInrush));
        for (var i = 0; i < alternating.Count; i++)
        {
            (alternating.Series[i], alternating.Open[i], alternating.Load[i]) = (new Complex(work.Series[i], work.SeriesCoils[i] * reactance), work.Parted[i], Complex.Zero);
        }

        foreach (ref readonly var load in work.Loads)
        {
            alternating.Load[load.Node] += load.IsOpen ? Complex.Zero : 1 / load.Impedance(reactance).Ohms;
        }

        var siemens = work.IsCutOff ? Complex.Zero : alternating.Admittance(-1);
        var terminal = volts / (1 + (source * siemens));
        var amperes = siemens * terminal;
        var node = work.Measures == Measure.CoilVolts ? feeder.Path.Valves[work.Valve].Leg : -1;
        if (work.IsCutOff)
        {
            return node < 0 && work.Measures == Measure.TerminalVolts ? Spread(work, volts) : Prediction.Nothing(work.IsTouched);
        }

        alternating.Drive(-1, terminal);
        var shown = work.Measures switch { Measure.StationAmps => amperes, Measure.TerminalVolts => terminal, _ => alternating.Volts[node] };
        if (shown.Magnitude < Nothing)
        {
            return Prediction.Nothing(work.IsTouched);
        }

        if (node < 0)
        {
            AtController(work, shown, amperes, terminal, reactance);
        }
        else
        {
            AtCoil(work, shown, amperes, node, reactance);
        }

        return Spread(work, shown.Magnitude).On(work.HalfWave);
    }

    /// <summary>Volts or amperes so small that they are rounding of the solution.</summary>
    private const double Nothing = 1e-9;

    private void AtController(FeederVariation work, Complex shown, Complex amperes, Complex terminal, double reactance)
    {
        var volts = feeder.Supply.Volts;
        var factor = work.Measures == Measure.StationAmps ? -1 / volts : work.SourceOhms / volts;
        Complex Slope(Complex current) => factor * current * current;
        for (var i = 0; i < alternating.Count; i++)
        {
            legSlopes[i] = Along(shown, Slope(alternating.Amperes[i]));
        }

        AddLoads(work, reactance, shown, (node, ohms) => Slope(alternating.Volts[node] / ohms));
        sourceSlope = Along(shown, work.Measures == Measure.StationAmps ? -amperes * amperes / volts : -amperes * terminal / volts);
    }

    private void AtCoil(FeederVariation work, Complex shown, Complex amperes, int node, double reactance)
    {
        var back = alternating.SendBack(node, work.SourceOhms);
        for (var i = 0; i < alternating.Count; i++)
        {
            legSlopes[i] = Along(shown, alternating.Amperes[i] * alternating.AdjointAmperes[i]);
        }

        AddLoads(work, reactance, shown, (at, ohms) => alternating.Volts[at] * alternating.AdjointVolts[at] / (ohms * ohms));
        sourceSlope = Along(shown, amperes * back);
    }

    private void AddLoads(FeederVariation work, double reactance, Complex shown, Func<int, Complex, Complex> slopeOf)
    {
        foreach (ref readonly var load in work.Loads)
        {
            var (ohms, coil, shunt) = load.Impedance(reactance);
            var slope = slopeOf(load.Node, ohms);
            loadSlopes.Add(load.IsOpen ? default : (Along(shown, slope * coil), Along(shown, slope * shunt), Along(shown, slope)));
        }
    }

    /// <summary>Slope of the magnitude.</summary>
    private static double Along(Complex shown, Complex slope) => (Complex.Conjugate(shown) * slope).Real / shown.Magnitude;

    private Prediction Spread(FeederVariation work, double mean)
    {
        var (known, bias) = Shared(work);
        var (slopes, amounts) = (new double[known.Length], work.Suspects == 0 ? [] : new double[Prediction.AmountsOfOne * work.Suspects]);
        var (level, own, copper) = (0.0, 0.0, 0.0);
        for (var i = 0; i < legSlopes.Length; i++)
        {
            var change = legSlopes[i] * (feeder.ConductorCopper[i] + (work.IsEarthed ? 0 : feeder.CommonCopper[i]));
            slopes[FirstLength + i] = change * feeder.LengthSpread[i];
            copper += change;
        }

        foreach (var extra in work.Extras)
        {
            var change = legSlopes[extra.Leg] * extra.Ohms;
            level += extra.IsLevel ? change : 0;
            amounts[(Prediction.AmountsOfOne * extra.Suspect) + (extra.IsLevel ? Prediction.FurtherCoil : 0)] += change * extra.LogSpread;
            own += Square(change * extra.Drift);
        }

        for (var k = 0; k < loadSlopes.Count; k++)
        {
            ref readonly var load = ref work.Loads[k];
            var slope = loadSlopes[k];
            var coil = slope.Coil == 0 ? 0 : slope.Coil * load.CoilOhms;
            level += load.IsLevel ? coil : 0;
            copper += slope.Wire * load.WireOhms;
            var shunt = slope.Shunt == 0 ? 0 : slope.Shunt * load.ShuntOhms * load.ShuntSpread;
            if (load.Coil >= 0)
            {
                var batch = FirstLength + legSlopes.Length + load.Coil;
                slopes[batch] = load.IsLevel ? coil * feeder.Book.Coil.BatchSpread : 0;
                slopes[batch + feeder.Batches.Length] = coil * load.CoilSpread;
            }
            else if (load.Suspect >= 0)
            {
                amounts[(Prediction.AmountsOfOne * load.Suspect) + (load.IsCoil ? Prediction.FurtherCoil : 0)] += coil * load.CoilSpread;
            }
            else
            {
                own += Square(coil * load.CoilSpread);
            }

            if (load.Suspect >= 0)
            {
                var first = Prediction.AmountsOfOne * load.Suspect;
                amounts[first] += shunt + (coil * load.RatioSpread);
                amounts[first + Prediction.FurtherWire] += slope.Wire * load.WireOhms * load.WireSpread;
            }
        }

        if (work.Inside >= 0)
        {
            amounts[(Prediction.AmountsOfOne * work.Inside) + Prediction.Along] += AlongStretch(work, feeder.Cut);
        }

        var weakness = work.Weakness;
        if (weakness.Suspect >= 0)
        {
            amounts[Prediction.AmountsOfOne * weakness.Suspect] += sourceSlope * weakness.Ohms * weakness.LogSpread;
        }

        slopes[0] = copper * CopperWire.PerKelvinAt20C * feeder.Book.Wire.SoilSpreadCelsius;
        slopes[1] = work.IsFed ? mean * feeder.Supply.VoltsSpread / feeder.Supply.Volts : 0;
        slopes[2] = mean * bias;
        return new Prediction(mean, level, own, false, work.IsTouched, known, slopes) { Amounts = amounts };
    }

    /// <summary>Change of the mean for one standard deviation of where in a cut stretch something sits: one half longer, each one beyond as much shorter.</summary>
    private double AlongStretch(FeederVariation work, int cut)
    {
        double Change(int leg) => legSlopes[leg] * 2 * (feeder.ConductorCopper[leg] + (work.IsEarthed ? 0 : feeder.CommonCopper[leg]));
        var change = Change(cut);
        for (var i = cut + 1; i < legSlopes.Length; i++)
        {
            change -= feeder.Path.Legs[i].Parent == cut ? Change(i) : 0;
        }

        return change * CutPath.ShareSpread;
    }

    /// <summary>A valve that pulls in is read by nobody's meter.</summary>
    private (int[] Shared, double Bias) Shared(FeederVariation work)
    {
        if (!shared.TryGetValue((work.Measures, work.IsInrush), out var known))
        {
            var instrument = work.IsInrush ? null : feeder.Book.InstrumentOf(work.Measures);
            known = ([Unknowns.Soil, Unknowns.Supply, instrument is null ? Unknowns.Soil : unknowns.Bias(instrument), .. feeder.Lengths, .. feeder.Batches, .. feeder.Own], instrument?.Bias ?? 0);
            shared[(work.Measures, work.IsInrush)] = known;
        }

        return known;
    }

    private static double Square(double x) => x * x;
}
