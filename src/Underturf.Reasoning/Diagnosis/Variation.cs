using Underturf.Networks.Wiring;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>The ohms of a bench under suspects, put in their slots.</summary>
internal sealed class Variation(Bench bench, PracticeBook book) : IFaultyCircuit
{
    private readonly List<Part> parts = [.. bench.Parts];
    private readonly List<(int Element, double Henries)> inductances = [];

    public double[] Ohms { get; } = [.. bench.Ohms];

    public IReadOnlyList<Part> Parts => parts;

    public bool IsChanged { get; private set; }

    /// <summary>What the meter shows of a sine's amount, half waves passing; nothing where only sines do.</summary>
    public Spread? HalfWave { get; private set; }

    public bool IsFed => bench.Setup.IsFed;

    public bool IsReversed => bench.Setup.Measures == Measure.ReversedOhms;

    public bool IsOnOtherCommon => bench.Setup.Measures == Measure.OtherCommonOhms;

    /// <summary>The bench's network with these ohms.</summary>
    public WiringNetwork Network()
    {
        var network = bench.Network.With(Ohms);
        foreach (var (element, henries) in inductances)
        {
            network = network.WithHenries(element, henries);
        }

        return network;
    }

    public void Break(Suspect suspect)
    {
        if (bench.SeriesElement(suspect) is var element and >= 0)
        {
            Set(element, double.PositiveInfinity);
        }
    }

    /// <summary>As far from the other common as from its own.</summary>
    public void JoinOther() => Set(bench.Sensor, 0);

    public void AddSeries(Suspect suspect, double ohms)
    {
        if (bench.SeriesElement(suspect) is var element and >= 0)
        {
            Add(element, ohms, PartKind.Other, suspect.SeriesLogSpread);
        }
    }

    public void AddCoils(Suspect suspect, int count)
    {
        if (bench.SeriesElement(suspect) is var element and >= 0)
        {
            Add(element, count * book.Coil.Ohms, PartKind.LevelCoil, CoilModel.UnseenSpread(book, count));
            if (IsFed)
            {
                inductances.Add((element, count * CoilModel.Henries(book, bench.Setup.Inrush)));
            }
        }
    }

    /// <summary>Shorted turns are a shunt that leaves the coil this share of its ohms, at any frequency.</summary>
    public void ShortTurns(Suspect suspect, double share, double logSpread)
    {
        if (bench.Coil(suspect) is { IsJoined: false } slots && double.IsFinite(Ohms[slots.Coil]))
        {
            Put(slots.Shunt, Ohms[slots.Coil] * share / (1 - share), logSpread);
        }
    }

    public void ScaleCoil(Suspect suspect, double ratio, double logSpread)
    {
        if (bench.Coil(suspect) is { IsJoined: false } slots && double.IsFinite(Ohms[slots.Coil]))
        {
            var known = parts.FindIndex(p => p.Element == slots.Coil);
            Set(slots.Coil, Ohms[slots.Coil] * ratio);
            parts[known] = parts[known] with { Ohms = Ohms[slots.Coil] };
            parts.Add(new Part(slots.Coil, PartKind.Other, -1, Ohms[slots.Coil], logSpread));
        }
    }

    public void ScaleRun(Suspect suspect, double ratio, double logSpread)
    {
        if (!bench.Commons.TryGetValue(suspect.Leg!.Value, out var common))
        {
            return;
        }

        var whole = 0.0;
        foreach (var element in bench.Legs.Where(l => l.Key.Leg == suspect.Leg).Select(l => l.Value.Conductor).Append(common))
        {
            var copper = bench.Parts.First(p => p.Element == element).Ohms;
            Set(element, Ohms[element] + ((ratio - 1) * copper));
            whole += ratio * copper;
        }

        // One ratio for all of them, and the same current in most: to first order one part.
        parts.Add(new Part(common, PartKind.Other, -1, whole, logSpread));
    }

    public void MoveOn(Suspect suspect, double metres, double logSpread)
    {
        if (bench.Setup.Measures == Measure.CoilOhms)
        {
            return;
        }

        foreach (var slots in bench.CoilsBehind(suspect).Where(s => double.IsFinite(Ohms[s.Coil])))
        {
            Add(slots.Coil, BenchLayout.FurtherWireOhms(book, metres), PartKind.Wire, logSpread);
        }
    }

    /// <summary>Where the sound insulation has the same slot, the leak is all that counts of it.</summary>
    public void Leak(Suspect suspect, double ohms, double logSpread)
    {
        if (bench.Slots(suspect) is { Leak: >= 0 } slots)
        {
            parts.RemoveAll(p => p.Element == slots.Leak);
            Put(slots.Leak, ohms, logSpread);
        }
    }

    public void TouchCommon(Suspect suspect, double ohms, double logSpread)
    {
        if (bench.Slots(suspect) is { BranchCoil: >= 0 } slots)
        {
            Put(slots.BranchWire, ohms, logSpread);
            Set(slots.BranchCoil, 0);
            inductances.Add((slots.BranchCoil, 0));
        }
    }

    /// <summary>So many like coils side by side, each on its own stretch of wire, are one with so many times less ohms and henries.</summary>
    public void Branch(Suspect suspect, int count)
    {
        if (bench.Slots(suspect) is not { BranchCoil: >= 0 } slots)
        {
            return;
        }

        var unit = BenchLayout.BranchWireOhms(book) / count;
        Set(slots.BranchWire, unit);
        Set(slots.BranchCoil, book.Coil.Ohms / count);
        inductances.Add((slots.BranchCoil, bench.Network.ElementAt(slots.BranchCoil).Henries / count));
        parts.Add(new Part(slots.BranchWire, PartKind.Wire, -1, unit, book.Wire.BranchSpread / Math.Sqrt(count)));
        parts.Add(new Part(slots.BranchCoil, PartKind.LevelCoil, -1, book.Coil.Ohms / count, CoilModel.UnseenSpread(book, count)));
    }

    public void Join()
    {
        if (bench.Join >= 0)
        {
            Set(bench.Join, 0);
        }
    }

    public void Rectify(Suspect suspect)
    {
        var setup = bench.Setup;
        HalfWave ??= HalfWaves.Shown(suspect, setup.Measures, setup.Inrush, setup.Paths[0], setup.Valve);
        IsChanged |= HalfWave is not null;
    }

    public void WeakenSupply(double ohms, double logSpread)
    {
        if (bench.Source >= 0)
        {
            Add(bench.Source, ohms, PartKind.Other, logSpread);
        }
    }

    private void Add(int element, double ohms, PartKind kind, double logSpread)
    {
        Set(element, Ohms[element] + ohms);
        parts.Add(new Part(element, kind, -1, ohms, logSpread));
    }

    private void Put(int element, double ohms, double logSpread)
    {
        Set(element, ohms);
        parts.Add(new Part(element, PartKind.Other, -1, ohms, logSpread));
    }

    private void Set(int element, double ohms)
    {
        Ohms[element] = ohms;
        IsChanged = true;
    }
}
