using Bunit;
using Underturf.FieldApp;

namespace Underturf.Browser;

/// <summary>What the list of stations says while newer notes are being thought about.</summary>
public sealed class StationsPlaceTests : BunitContext
{
    private static readonly byte[] demo = File.ReadAllBytes(Checkout.DemoLog);

    private static readonly StationLine known = new("s1", "1", "lawn", "31 ohm", null, "28 to 34 ohm", IsOlder: false, null);

    [Fact]
    public void A_prediction_that_is_not_worked_out_yet_is_that_of_the_reading_before_or_said_to_be_missing()
    {
        Assert.Equal("predicted 28 to 34 ohm", Said(known, isNewest: false));
        Assert.Equal("predicted 28 to 34 ohm for the reading before", Said(known with { IsOlder = true }, isNewest: false));
        Assert.Equal("prediction not worked out yet", Said(known with { Predicted = null }, isNewest: false));
        Assert.Equal("", Said(known with { Predicted = null }, isNewest: true));
        Assert.Equal("", Said(known with { Read = null, Predicted = null }, isNewest: false));
    }

    [Fact]
    public async Task A_reading_that_is_newer_than_the_answers_stands_beside_what_was_predicted_for_the_one_before()
    {
        var log = new DeviceLog(new MemoryDevice());
        await log.OpenDeviceAsync();
        await log.TakeInAsync(DeviceLog.Served, demo);
        var before = log.History.Facts.Readings.Last(reading => reading.Fact is { How: StationLine.StationOhms, Stations: ["s9"] }).Entry.ToString();
        var opened = new OpenedLog(new Reasoning.Answers("0.1.0", "1", [], []), []) { Readings = [new PredictedReading(before, "47 to 61 ohm")] };
        Assert.Equal(("47 to 61 ohm", false), Predicted(log, opened));
        await log.NoteAsync(new FieldLog.ReadingFact { How = StationLine.StationOhms, Stations = ["s9"], Value = FieldLog.Shown.Parse("50 ohm").Value });
        Assert.Equal(("47 to 61 ohm", true), Predicted(log, opened));
        Assert.Equal((null, false), Predicted(log, null));
    }

    private static (string? Predicted, bool IsOlder) Predicted(DeviceLog log, OpenedLog? opened)
    {
        var line = StationLine.All(log.History, opened).Single(line => line.Id == "s9");
        return (line.Predicted, line.IsOlder);
    }

    private string Said(StationLine line, bool isNewest) =>
        Render<StationPrediction>(p => p.Add(s => s.Line, line).Add(s => s.IsNewest, isNewest)).Nodes.Select(node => node.TextContent).Aggregate("", (all, text) => all + text).Trim();
}
