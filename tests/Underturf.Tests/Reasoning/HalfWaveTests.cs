using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning;

/// <summary>What belief expects of a meter behind diodes, beside the time domain of made-up devices.</summary>
public sealed class HalfWaveTests
{
    private const string Station = "s2";
    private const double OpenVolts = 26.5;
    private static readonly PracticeBook book = PracticeBook.Default;
    private static readonly PropertyHistory history = PropertyHistory.Fold(Site.Line().Log().Standing);
    private static readonly IReadOnlyList<StationPath> paths = new PathFinder(history.Now, book).All();

    [Theory]
    [InlineData("running amps")]
    [InlineData("valve volts")]
    public void A_meter_behind_diodes_shows_what_the_book_expects_of_half_waves(string how)
    {
        var within = 0;
        for (ulong seed = 1; seed <= 60; seed++)
        {
            var device = new TrueDevice(TakesPositive: seed % 2 == 0, OwnDiode: true, OtherDiode: seed % 5 > 0, ControllerHalf: seed % 4 == 0, 1e-9, 1.8);
            var (expected, spread) = Expected(how, moreCoils: device.ControllerHalf && device.OtherDiode ? 0 : 1);
            within += Math.Abs(Math.Log(Read(how, device, seed) / expected)) < 2 * spread ? 1 : 0;
        }

        Assert.True(within >= 57, $"{within} of 60 within two spreads");
    }

    private static double Read(string how, TrueDevice device, ulong seed)
    {
        var fault = new TrueFault("sharing-device", Station, null, Path.Valves[0].Place, 0, 1, ["the other lawn"]) { Device = device };
        var technician = new VirtualTechnician(paths, [fault], book, new TrueNumbers(book, seed), OpenVolts);
        var reading = new ReadingFact { How = how, Stations = [Station], Place = Path.Valves[0].Place, Value = Shown.OverRange };
        return technician.Read(reading, how).Value.Value!.Value.Si;
    }

    /// <summary>The mean, and the spread of its logarithm: what the half waves leave open, coils and wire beside them.</summary>
    private static (double Mean, double Spread) Expected(string how, int moreCoils)
    {
        var fault = book.Faults.Single(f => f.HalfWaveAmps is not null);
        var suspect = new Suspect { Seat = new SuspectSeat(fault, Station, Path.Legs[^1].Key, Path.Valves[0].Place) { MoreCoils = moreCoils }, Weight = 1 };
        var (supply, unknowns) = (new Supplies(history, book).Of(history.Now, Path.Controller, 0), new Unknowns(book));
        var feeder = new StationFeeder(Path, book, supply, unknowns, [Path.Legs.Count - 1], -1);
        var measures = book.Probe(how)!.Measures;
        var prediction = feeder.Predict(measures, Path.Valves[0].Place, inrush: false, [suspect]);
        var variance = prediction.OwnVariance + prediction.Slopes.Sum(s => s * s) + prediction.Amounts.Sum(a => a * a) + Math.Pow(prediction.LevelSlope * book.Coil.LevelSpread, 2);
        return (prediction.Mean, Math.Sqrt(variance) / prediction.Mean);
    }

    private static StationPath Path => paths.First(p => p.Station == Station);
}
