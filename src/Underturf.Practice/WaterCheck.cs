namespace Underturf.Property.Practice;

/// <summary>What must hold between the numbers of the water side.</summary>
internal static class WaterCheck
{
    private static readonly string[] Series = ["Schedule40", "Sdr21", "Sdr26", "Polyethylene"];

    public static IEnumerable<(bool Holds, string Place, string Reason)> Of(PracticeBook book) =>
        Numbers(book.Water).Concat(Readings(book.Water)).Concat(Faults(book)).Concat(Things(book.Water)).Concat(Names(book.Water));

    private static IEnumerable<(bool Holds, string Place, string Reason)> Numbers(WaterPractice book)
    {
        foreach (var (place, value) in new (string, double)[]
        {
            ("mainMetres", book.MainMetres), ("wetMetres", book.WetMetres), ("watchMinutes", book.WatchMinutes), ("roundMinutes", book.RoundMinutes), ("uncuredMinutes", book.UncuredMinutes), ("leftDays", book.LeftDays), ("cubicMetreMinutes", book.CubicMetreMinutes), ("usual.stationsDiffer", book.Usual.StationsDiffer), ("usual.outletsDiffer", book.Usual.OutletsDiffer), ("usual.pressuresDiffer", book.Usual.PressuresDiffer), ("usual.cansDiffer", book.Usual.CansDiffer),
            ("isolating.turnMinutes", book.Isolating.TurnMinutes), ("isolating.lossFactor", book.Isolating.LossFactor), ("usual.valveKilopascals", book.Usual.ValveKilopascals), ("isolating.flowVelocityMetresPerSecond", book.Isolating.FlowVelocityMetresPerSecond), ("isolating.portMillimetres", book.Isolating.PortMillimetres),
            ("isolating.pumpLitresPerMinute", book.Isolating.PumpLitresPerMinute), ("isolating.wetFactor", book.Isolating.WetFactor), ("isolating.fillMetresPerSecond", book.Isolating.FillMetresPerSecond),
        })
        {
            yield return (value > 0, $"water.{place}", "must be more than zero");
        }

        yield return (book.LeastLitresPerMinute > 0 && book.MostLitresPerMinute > book.LeastLitresPerMinute, "water.leastLitresPerMinute", "must be above zero and below mostLitresPerMinute");
        yield return (book.LeakExponent is >= 0 and <= 3, "water.leakExponent", "must be from 0 to 3");
        yield return (book.SupplyHidden is > 0 and < 1, "water.supplyHidden", "must be a chance between 0 and 1");
        yield return (book.Usual is { MeterShare: > 0, BackflowShare: > 0 } && book.Usual.MeterShare + book.Usual.BackflowShare < 1, "water.usual.meterShare", "and backflowShare must be above 0 and together below 1");
        yield return (book.Usual.LeastEvenness is > 0 and < 1, "water.usual.leastEvenness", "must be between 0 and 1");
        yield return (book.Unmodelled is > 0 and < 1, "water.unmodelled", "must be a chance between 0 and 1");
        yield return (book.Isolating.NotHolding is > 0 and < 1, "water.isolating.notHolding", "must be a chance between 0 and 1");
        yield return (book.Isolating is { PortDischargeLeast: > 0, PortDischargeMost: <= 1 } && book.Isolating.PortDischargeLeast <= book.Isolating.PortDischargeMost, "water.isolating.portDischargeLeast", "must be above 0 and at most portDischargeMost, which is at most 1");
        yield return (book.Isolating.PumpReadyMinutes >= 0, "water.isolating.pumpReadyMinutes", "must not be below zero");
        yield return (book.LowHead is { WithoutChecks: > 0 and < 1, DischargeLeast: > 0 and <= 1 }, "water.lowHead", "needs withoutChecks between 0 and 1, and dischargeLeast above 0 and at most 1");
        yield return (book.LowHead is { HeightsDifferMetres: > 0, RestMetres: > 0, UsualLitres: > 0, SpacingMetresLeast: > 0, BoreMillimetresLeast: > 0 } low && low.SpacingMetresLeast <= low.SpacingMetresMost && low.BoreMillimetresLeast <= low.BoreMillimetresMost,
            "water.lowHead", "needs metres, millimetres and litres above zero, the least no more than the most");
        var usual = book.Usual;
        yield return (new[] { usual.StaticKilopascals, usual.LossKilopascals, usual.StationLitresPerMinute, usual.OutletKilopascals, usual.OpeningSeconds, usual.ClosingSeconds, usual.Evenness }.All(IsPositive),
            "water.usual", "needs medians and spreads above zero");
    }

    private static IEnumerable<(bool Holds, string Place, string Reason)> Readings(WaterPractice book)
    {
        foreach (var meter in book.Instruments)
        {
            yield return (meter is { Accuracy: >= 0, Floor: > 0, Step: > 0 }, $"instrument {meter.Name}", "needs floor and step above zero and no accuracy below it");
            yield return (meter.Repeat is null || (meter.Repeat >= 0 && meter.Repeat <= meter.Accuracy), $"instrument {meter.Name}", "needs a repeat of zero or more and at most its accuracy");
        }

        foreach (var probe in book.Probes)
        {
            yield return (book.Instruments.Any(i => i.Name == probe.Instrument), $"probe {probe.Name}", $"names an unknown instrument '{probe.Instrument}' of the water side");
            yield return (probe.Minutes >= 0, $"probe {probe.Name}", "needs minutes of zero or more");
        }

        foreach (var sight in book.Sights)
        {
            yield return (sight.Imagined is > 0 and < 1, $"sight {sight.Name}", "needs a chance to be imagined between 0 and 1");
        }

        yield return (book.Probes.Select(p => p.Measures).Distinct().Count() == Enum.GetValues<WaterMeasure>().Length, "water.probes", "needs one probe for each thing that is measured");
    }

    private static IEnumerable<(bool Holds, string Place, string Reason)> Faults(PracticeBook book)
    {
        yield return (book.Water.Of(WaterScope.Valve).Any(), "water.faults", "holds no valve that does not close, so that nothing could ever be rebuilt");
        foreach (var fault in book.Water.Faults)
        {
            var place = $"fault {fault.Id}";
            yield return (fault.Rate is > 0 and < 0.5, place, "needs a rate above 0 and below 0.5");
            yield return (fault.Spreads.All(IsPositive), place, "needs medians and spreads above zero");
            yield return (fault.Seen.All(s => s.Value is > 0 and < 1), place, "needs chances to be seen between 0 and 1");
            yield return (fault.Seen.Keys.All(s => book.Water.Sights.Any(k => k.Name == s)), place, "names a sight that is not among the sights");
            yield return (book.Repair(fault.Repair) is not null || (fault.Repair.Length == 0 && fault.Scope == WaterScope.Elsewhere), place, $"names an unknown repair '{fault.Repair}'");
            yield return ((fault.LeaksLitresPerMinute is not null) == (fault.Scope is WaterScope.Valve or WaterScope.Main or WaterScope.Meter or WaterScope.Elsewhere), place, "needs leaksLitresPerMinute where water runs that should not, and nowhere else");
        }
    }

    private static IEnumerable<(bool Holds, string Place, string Reason)> Things(WaterPractice book)
    {
        foreach (var outlet in book.Outlets)
        {
            yield return (outlet is { LitresPerMinute: > 0, Kilopascals: > 0, Exponent: >= 0 and <= 1 }, $"outlet {outlet.Name}", "needs flow and pressure above zero and an exponent from 0 to 1");
        }

        foreach (var pipe in book.Pipes)
        {
            yield return (Series.Contains(pipe.Series), $"pipe {pipe.Name}", $"needs a series that is one of {string.Join(", ", Series)}");
            yield return (pipe.SmoothnessFactor is >= 10 and <= 200, $"pipe {pipe.Name}", "needs a smoothness factor from 10 to 200");
        }

        foreach (var meter in book.Meters)
        {
            yield return (meter is { Millimetres: > 0, LitresPerMinute: > 0, Kilopascals: > 0 }, $"meter {meter.Name}", "needs millimetres, flow and loss above zero");
        }

        foreach (var device in book.Backflows)
        {
            yield return (device is { OpensKilopascals: >= 0, MetresPerSecond: > 0 } && device.Kilopascals > device.OpensKilopascals, $"backflow device {device.Name}", "needs a speed above zero and a loss above what it takes to open");
        }

        foreach (var repair in book.Repairs)
        {
            yield return (repair.Minutes >= 0, $"repair {repair.Name}", "needs minutes of zero or more");
        }
    }

    private static IEnumerable<(bool Holds, string Place, string Reason)> Names(WaterPractice book)
    {
        foreach (var (place, names) in new (string, IEnumerable<string>)[]
        {
            ("instruments", book.Instruments.Select(i => i.Name)), ("probes", book.Probes.Select(p => p.Name)), ("sights", book.Sights.Select(s => s.Name)), ("faults", book.Faults.Select(f => f.Id)),
            ("repairs", book.Repairs.Select(r => r.Name)), ("outlets", book.Outlets.Select(o => o.Name)), ("pipes", book.Pipes.Select(p => p.Name)), ("meters", book.Meters.Select(m => m.Name)), ("backflows", book.Backflows.Select(b => b.Name)),
        })
        {
            yield return (names.Distinct().Count() == names.Count(), $"water.{place}", "has a name twice");
        }
    }

    private static bool IsPositive(Spread spread) => spread is { Median: > 0, LogSpread: > 0 };
}
