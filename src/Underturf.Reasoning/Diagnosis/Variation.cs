using Underturf.Networks.Wiring;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>The ohms of a bench under suspects: reads the effects that the practice book gives a fault and puts them in their slots.</summary>
internal sealed class Variation(Bench bench, PracticeBook book)
{
    private readonly List<Part> parts = [.. bench.Parts];
    private readonly List<(int Element, double Henries)> inductances = [];

    public double[] Ohms { get; } = [.. bench.Ohms];

    public IReadOnlyList<Part> Parts => parts;

    public bool IsChanged { get; private set; }

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

    public void Apply(Suspect suspect)
    {
        if (suspect.Fault is not { } fault)
        {
            return;
        }

        Join(fault);
        Feed(suspect, fault);
        if (bench.SeriesElement(suspect) is var element and >= 0)
        {
            Series(element, suspect, fault);
        }

        if (suspect.Station is { } station)
        {
            Coil(suspect, fault, station);
            Leg(suspect, fault, station);
        }
    }

    private void Series(int element, Suspect suspect, FaultPractice fault)
    {
        if (fault.Open)
        {
            Set(element, double.PositiveInfinity);
        }

        if (fault.SeriesOhms is not null || (fault.DcSeriesOhms is not null && !bench.Setup.IsFed))
        {
            Set(element, Ohms[element] + suspect.Amount);
            parts.Add(new Part(element, PartKind.Other, -1, suspect.Amount, suspect.SeriesLogSpread));
        }

        if (fault.SeriesCoils is { } coils)
        {
            Set(element, Ohms[element] + ((coils - 1) * book.Coil.Ohms));
            parts.Add(new Part(element, PartKind.LevelCoil, -1, (coils - 1) * book.Coil.Ohms, book.Coil.Differ));
        }
    }

    private void Coil(Suspect suspect, FaultPractice fault, string station)
    {
        if (fault.CoilFactor is null || !bench.Coils.TryGetValue((station, suspect.Place!), out var slots) || !double.IsFinite(Ohms[slots.Coil]))
        {
            return;
        }

        // Shorted turns are a shunt that leaves the coil this share of its ohms, at any frequency.
        var share = Math.Min(suspect.Amount, 0.99);
        var shunt = Ohms[slots.Coil] * share / (1 - share);
        Set(slots.Shunt, shunt);
        parts.Add(new Part(slots.Shunt, PartKind.Other, -1, shunt, suspect.AmountLogSpread));
    }

    private void Leg(Suspect suspect, FaultPractice fault, string station)
    {
        if (bench.Slots(suspect) is not { } slots)
        {
            return;
        }

        if (fault.EarthOhms is not null && slots.Leak >= 0)
        {
            // Where the sound insulation has the same slot, the leak is all that counts of it.
            parts.RemoveAll(p => p.Element == slots.Leak);
            Set(slots.Leak, suspect.Amount);
            parts.Add(new Part(slots.Leak, PartKind.Other, -1, suspect.Amount, suspect.AmountLogSpread));
        }

        if (fault.ToCommonOhms is not null && slots.BranchCoil >= 0)
        {
            Set(slots.BranchWire, suspect.Amount);
            Set(slots.BranchCoil, 0);
            inductances.Add((slots.BranchCoil, 0));
            parts.Add(new Part(slots.BranchWire, PartKind.Other, -1, suspect.Amount, suspect.AmountLogSpread));
        }

        if (suspect.MoreCoils > 0 && slots.BranchCoil >= 0)
        {
            Branch(slots, suspect.MoreCoils);
        }
    }

    /// <summary>So many like coils side by side, each on its own stretch of wire, are one with so many times less ohms and henries.</summary>
    private void Branch(Bench.LegSlots slots, int count)
    {
        var unit = BenchLayout.BranchWireOhms(book) / count;
        Set(slots.BranchWire, unit);
        Set(slots.BranchCoil, book.Coil.Ohms / count);
        inductances.Add((slots.BranchCoil, bench.Network.ElementAt(slots.BranchCoil).Henries / count));
        var narrowing = Math.Sqrt(count);
        parts.Add(new Part(slots.BranchWire, PartKind.Wire, -1, unit, book.Wire.BranchSpread / narrowing));
        parts.Add(new Part(slots.BranchCoil, PartKind.LevelCoil, -1, book.Coil.Ohms / count, book.Coil.Differ / narrowing));
    }

    private void Join(FaultPractice fault)
    {
        if (fault.Joins && bench.Join >= 0)
        {
            Set(bench.Join, 0);
        }
    }

    private void Feed(Suspect suspect, FaultPractice fault)
    {
        if (fault.SourceOhms is not null && bench.Source >= 0)
        {
            Set(bench.Source, Ohms[bench.Source] + suspect.Amount);
            parts.Add(new Part(bench.Source, PartKind.Other, -1, suspect.Amount, suspect.AmountLogSpread));
        }
    }

    private void Set(int element, double ohms)
    {
        Ohms[element] = ohms;
        IsChanged = true;
    }
}
