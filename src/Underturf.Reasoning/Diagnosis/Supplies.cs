using Underturf.FieldLog;
using Underturf.Networks.Wiring;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>What each controller's supply gives with nothing running, as read, else as noted, else as usual.</summary>
internal sealed class Supplies(PropertyHistory history, PracticeBook book)
{
    private readonly IReadOnlyList<Observed<ReadingFact>> idle =
        [.. history.Facts.Readings.Where(r => book.Probe(r.Fact.How)?.Measures == Measure.SupplyVolts && r.Fact.Value.Value is { Dimension: Dimension.Voltage })];

    private readonly IReadOnlyList<Observed<WorkFact>> works =
        [.. history.Facts.Works.Where(w => book.Faults.Any(f => f.Scope == FaultScope.Supply && f.Repair == w.Fact.Did))];

    /// <summary>Of all readings between the same work on the supply: their mean, and no surer than they agree.</summary>
    public Supply Of(PropertyView view, string controller, int epoch)
    {
        var known = view.Controllers.GetValueOrDefault(controller);
        var hertz = known?.PlateHertz() ?? book.Supply.Hertz;
        var age = Age(epoch == 0 ? default : history.WorkTimes[epoch - 1]);
        var plate = Plate(known);
        var read = Readings(controller).Where(r => Age(r.Moment) == age && Volts(r) > 0).ToList();
        if (read.Count == 0)
        {
            return new Supply(plate.OpenVolts, book.Supply.VoltsSpread, hertz, plate.InnerOhms, plate.RatedVoltAmperes);
        }

        var (low, high) = (read.Min(Volts), read.Max(Volts));
        return new Supply(read.Average(Volts), Math.Max(Sigma(read[0]), (high - low) / 2), hertz, plate.InnerOhms, plate.RatedVoltAmperes);
    }

    /// <summary>As noted on the controller's plate, else as usual. A plate does not say the volts at rated load: their share is the usual one.</summary>
    private Transformer Plate(ControllerFact? known)
    {
        var volts = known?.PlateVolts() ?? book.Supply.Volts;
        return new Transformer(
            volts,
            volts * book.Supply.RatedVolts / book.Supply.Volts,
            known?.PlateVoltAmperes() ?? book.Supply.RatedVoltAmperes);
    }

    /// <summary>Readings that no supply in order shows: an open question by themselves.</summary>
    public IEnumerable<Observed<ReadingFact>> Strange() => idle.Where(r =>
        Math.Abs(Volts(r) - Usual(r)) > book.Questions.DisagreeSpreads * (book.Supply.VoltsSpread + Sigma(r)) && Age(r.Moment) == Age(Moment.Last));

    /// <summary>Readings of one supply, no work on it between, that lie too far apart: the lowest and the highest, and how many there are.</summary>
    public IEnumerable<(string Controller, IReadOnlyList<Observed<ReadingFact>> Readings, bool IsLast)> Disagreeing() =>
        from controller in history.Now.Controllers.Keys
        from same in Readings(controller).GroupBy(r => Age(r.Moment))
        where AreApart(same.MinBy(Volts)!, same.MaxBy(Volts)!)
        select (controller, (IReadOnlyList<Observed<ReadingFact>>)[.. same.OrderBy(r => r.Moment)], same.Key == Age(Moment.Last));

    public bool AreApart(Observed<ReadingFact> one, Observed<ReadingFact> other) =>
        Math.Abs(Volts(other) - Volts(one)) > book.Questions.DisagreeSpreads * (Sigma(other) + Sigma(one));

    public string Expected(Observed<ReadingFact> reading) => Say.Amount(Usual(reading), book.Supply.VoltsSpread, Dimension.Voltage);

    /// <summary>As noted on the controller's plate, else as usual.</summary>
    private double Usual(Observed<ReadingFact> reading) => history.Now.Controllers
        .Where(c => Concerns(reading, c.Key))
        .Select(c => c.Value.PlateVolts())
        .FirstOrDefault(v => v is not null) ?? book.Supply.Volts;

    private IEnumerable<Observed<ReadingFact>> Readings(string controller) => idle.Where(r => Concerns(r, controller));

    private bool Concerns(Observed<ReadingFact> reading, string controller) =>
        reading.Fact.Place is null || history.Now.Identity.Of(reading.Fact.Place) == controller;

    private int Age(Moment moment) => works.Count(w => w.Moment <= moment);

    private double Sigma(Observed<ReadingFact> reading) => book.Instrument(book.Probe(reading.Fact.How)!).Sigma(Volts(reading));

    private static double Volts(Observed<ReadingFact> reading) => reading.Fact.Value.Value!.Value.Si;
}
