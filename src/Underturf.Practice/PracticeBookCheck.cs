using Underturf.Quantities;

namespace Underturf.Property.Practice;

/// <summary>What must hold between the numbers of a book before anything is computed with it.</summary>
internal static class PracticeBookCheck
{
    private const string Remedy = "Correct the book; underturf book prints the default to compare with";

    public static Problem? FirstProblem(PracticeBook book) =>
        Checks(book).Where(c => !c.Holds).Select(c => new Problem($"practice book, {c.Place}", c.Reason, Remedy)).FirstOrDefault();

    private static IEnumerable<(bool Holds, string Place, string Reason)> Checks(PracticeBook book) =>
        Amounts(book).Concat(NotNegative(book)).Concat(Chances(book)).Concat(Meters(book)).Concat(Links(book)).Concat(Faults(book)).Concat(NamingCheck.Of(book.Naming)).Concat(LocatingCheck.Of(book.Locating)).Concat(TapingCheck.Of(book.Taping)).Concat(ReworkCheck.Of(book.Rework)).Concat(RepairingCheck.Of(book)).Concat(WaterCheck.Of(book)).Concat(DayCheck.Of(book));

    private static IEnumerable<(bool Holds, string Place, string Reason)> Amounts(PracticeBook book)
    {
        foreach (var (place, value) in new (string, double)[]
        {
            ("wire.stationAwg", book.Wire.StationAwg), ("wire.commonAwg", book.Wire.CommonAwg),
            ("wire.soundLeakOhms", book.Wire.SoundLeakOhms), ("wire.unknownRunMetres", book.Wire.UnknownRunMetres),
            ("wire.branchMetres", book.Wire.BranchMetres), ("coil.ohms", book.Coil.Ohms), ("coil.differ", book.Coil.Differ), ("coil.batchSpread", book.Coil.BatchSpread),
            ("coil.levelSpread", book.Coil.LevelSpread), ("coil.pullInSpread", book.Coil.PullInSpread), ("supply.volts", book.Supply.Volts),
            ("supply.hertz", book.Supply.Hertz), ("supply.ratedVolts", book.Supply.RatedVolts),
            ("supply.ratedVoltAmperes", book.Supply.RatedVoltAmperes), ("relay.ohms", book.Relay.Ohms), ("coil.pullInVolts", book.Coil.PullInVolts), ("coil.chatterVolts", book.Coil.ChatterVolts), ("walk.metresPerMinute", book.Walk.MetresPerMinute),
        })
        {
            yield return (value > 0 && double.IsFinite(value), place, "must be more than zero");
        }
    }

    private static IEnumerable<(bool Holds, string Place, string Reason)> NotNegative(PracticeBook book)
    {
        foreach (var (place, value) in new (string, double)[]
        {
            ("wire.gaugeSpread", book.Wire.GaugeSpread), ("wire.soilSpreadCelsius", book.Wire.SoilSpreadCelsius), ("wire.soundSpliceOhms", book.Wire.SoundSpliceOhms),
            ("wire.soundLeakSpread", book.Wire.SoundLeakSpread), ("wire.branchSpread", book.Wire.BranchSpread), ("wire.detour", book.Wire.Detour),
            ("wire.lengthSpread.measured", book.Wire.LengthSpread.Measured), ("wire.lengthSpread.told", book.Wire.LengthSpread.Told),
            ("wire.lengthSpread.estimated", book.Wire.LengthSpread.Estimated), ("wire.lengthSpread.inferred", book.Wire.LengthSpread.Inferred),
            ("wire.lengthSpread.unknown", book.Wire.LengthSpread.Unknown), ("coil.noted", book.Coil.Noted),
            ("coil.inrushReactanceOhms", book.Coil.InrushReactanceOhms), ("coil.holdingReactanceOhms", book.Coil.HoldingReactanceOhms),
            ("supply.voltsSpread", book.Supply.VoltsSpread), ("relay.reactanceOhms", book.Relay.ReactanceOhms), ("relay.spread", book.Relay.LogSpread), ("loss.wrongRepairMinutes", book.Loss.WrongRepairMinutes),
            ("loss.settledRegretMinutes", book.Loss.SettledRegretMinutes), ("walk.unknownMetres", book.Walk.UnknownMetres),
            ("walk.findMinutes", book.Walk.FindMinutes), ("run.minutes", book.Run.Minutes), ("look.minutes", book.Look.Minutes),
        })
        {
            yield return (value >= 0 && double.IsFinite(value), place, "must not be below zero");
        }
    }

    /// <summary>Chances whose logarithm is taken, so that neither never nor always may be said.</summary>
    private static IEnumerable<(bool Holds, string Place, string Reason)> Chances(PracticeBook book)
    {
        foreach (var (place, value) in new (string, double)[]
        {
            ("run.placeNoticed", book.Run.PlaceNoticed), ("run.placeImagined", book.Run.PlaceImagined),
            ("run.wrongPlaceNoticed", book.Run.WrongPlaceNoticed), ("run.wrongPlaceImagined", book.Run.WrongPlaceImagined),
            ("run.partnerNamed", book.Run.PartnerNamed), ("run.anothersPlace", book.Run.AnothersPlace),
            ("run.behaviourMistaken", book.Run.BehaviourMistaken), ("look.imagined", book.Look.Imagined),
            ("wire.unfoundBox", book.Wire.UnfoundBox), ("wire.commonsApart", book.Wire.CommonsApart), ("wire.commonForAll", book.Wire.CommonForAll), ("unmodelled.overRange", book.Unmodelled.OverRange), ("unmodelled.driftImagined", book.Unmodelled.DriftImagined), ("unmodelled.anothers", book.Unmodelled.Anothers),
            ("questions.openBelow", book.Questions.OpenBelow), ("questions.showAbove", book.Questions.ShowAbove),
        })
        {
            yield return (value is > 0 and < 1, place, "must be a chance between 0 and 1");
        }
    }

    private static IEnumerable<(bool Holds, string Place, string Reason)> Meters(PracticeBook book)
    {
        foreach (var meter in book.Instruments)
        {
            yield return (meter is { Step: > 0, Least: > 0, Floor: > 0, Accuracy: >= 0, Bias: >= 0 } && meter.Bias <= meter.Accuracy && meter.Most > meter.Least && meter.Most > meter.Step,
                $"instrument {meter.Name}", "needs step, floor and least above zero, most above least and step, and no more bias than accuracy");
        }
    }

    private static IEnumerable<(bool Holds, string Place, string Reason)> Links(PracticeBook book)
    {
        foreach (var probe in book.Probes)
        {
            yield return (book.Instruments.Any(i => i.Name == probe.Instrument), $"probe {probe.Name}", $"names an unknown instrument '{probe.Instrument}'");
        }

        foreach (var name in book.Faults.Select(f => f.Repair).Append(book.AsBuilt.WeakRepair).Where(r => r.Length > 0))
        {
            yield return (book.Repair(name) is not null, "faults", $"names an unknown repair '{name}'");
        }

        yield return (book.Faults.Count > 0, "faults", "holds no fault, so nothing could ever be wrong");
        yield return (book.Supply.RatedVolts < book.Supply.Volts, "supply.ratedVolts", "must be below supply.volts");
        yield return (book.Coil.ChatterVolts < book.Coil.PullInVolts, "coil.chatterVolts", "must be below coil.pullInVolts");
        yield return (book.Faults.Select(f => f.Id).Distinct().Count() == book.Faults.Count, "faults", "has an id twice");
        yield return (book.Probes.Select(p => p.Name).Distinct().Count() == book.Probes.Count, "probes", "has a name twice");
    }

    private static IEnumerable<(bool Holds, string Place, string Reason)> Faults(PracticeBook book)
    {
        foreach (var fault in book.Faults)
        {
            var place = $"fault {fault.Id}";
            yield return (fault.Rate is > 0 and < 0.5, place, "needs a rate above 0 and below 0.5");
            yield return (fault.Seen is >= 0 and <= 1 && fault.StaysShut is >= 0 and <= 1 && fault.Drifting is >= 0 and < 1,
                place, "has a chance outside 0 to 1");
            yield return (fault.OtherLive is >= 0 and <= 1, place, "needs otherLive of 0 to 1");
            yield return (fault.Drift >= 0 && fault.SeriesCoils is null or >= 2, place, "needs a drift of zero or more and seriesCoils of two or more");
            yield return (fault is { OneWay: >= 0, LostDiode: >= 0 } && fault.OneWay + fault.LostDiode < 1, place, "needs oneWay and lostDiode of zero or more and together below 1");
            yield return (fault.DcSeriesOhms is not null || fault.OneWay + fault.LostDiode == 0, place, "needs dcSeriesOhms where it has oneWay or lostDiode");
            yield return (fault.HalfWaves.Count() == (fault.DcSeriesOhms is null ? 0 : 2), place, "needs halfWaveAmps and halfWaveVolts where it has dcSeriesOhms, and nowhere else");
            yield return (fault.MoreCoils is null or (> 0 and < 1), place, "needs moreCoils above 0 and below 1");
            yield return (fault.Spreads.Concat(fault.HalfWaves).All(s => s is { Median: > 0, LogSpread: > 0 }), place, "needs medians and spreads above zero");
        }
    }
}
