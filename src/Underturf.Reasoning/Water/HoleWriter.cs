using Underturf.Networks.Hydraulics.Emptying;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>How long until a hole is dry, and whether to wait, to pump or to work wet.</summary>
internal sealed class HoleWriter(WaterCase owner, PipeRecord pipes)
{
    private IsolatingPractice Book => owner.Water.Isolating;

    private double RepairMinutes => owner.Book.Repair(owner.Water.Of(WaterScope.Valve).First().Repair)!.Minutes;

    /// <summary>From two timed levels in the hole, or from the heights of the pipes behind what is shut; nothing where neither is noted.</summary>
    public HoleAnswer? Write(string place, int? node, IReadOnlyList<int> shut, IReadOnlyList<string> dry) =>
        Levels(place) ?? (node is { } at ? Heights(at, shut, dry) : null) ?? Unknown();

    /// <summary>What would tell; nothing where nobody carries what it takes.</summary>
    private HoleAnswer? Unknown() => owner.Water.ProbeOf(WaterMeasure.HoleLevel) is { } probe && owner.Water.IsOwned(probe)
        ? new HoleAnswer(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"nothing yet: {probe.Say} twice, ten minutes apart ({2 * probe.Minutes:0.#} min); {char.ToLowerInvariant(probe.Caution[0])}{probe.Caution[1..].TrimEnd('.')}"), null, null, 0, double.MaxValue, [])
        : null;

    private HoleAnswer? Levels(string place)
    {
        string[] things = [place, .. owner.View.Valves.TryGetValue(place, out var valve) && valve.Box is { } box ? [owner.View.Identity.Of(box)] : Array.Empty<string>()];
        var levels = owner.Of(WaterMeasure.HoleLevel).Where(r => r.Place is { } p && things.Contains(p)).OrderBy(r => r.Moment).TakeLast(2).ToList();
        if (levels.Count < 2)
        {
            return null;
        }

        var seconds = (levels[1].Moment.At - levels[0].Moment.At).TotalSeconds;
        var until = TimedLevels.UntilDry(levels[0].Si, levels[1].Si, seconds, Math.Max(levels[0].Sigma, levels[1].Sigma), 0, 0);
        var from = $"two levels in the hole, {levels[0].Text} and {levels[1].Text}, {WaterSay.Time(seconds)} apart";
        return until.Succeeded
            ? new HoleAnswer(from, null, null, until.Value.LeastSeconds, until.Value.MostSeconds, Ways(until.Value, null))
            : new HoleAnswer($"{from}: {until.Problem!.Reason}. {until.Problem.Remedy}", null, null, 0, double.MaxValue, []);
    }

    private HoleAnswer? Heights(int node, IReadOnlyList<int> shut, IReadOnlyList<string> dry)
    {
        if (owner.Heights.All.Distinct().Count() < 2)
        {
            return null;
        }

        var parted = shut.Aggregate(pipes.Network, (n, e) => n.WithClosed(e, isClosed: true));
        var entries = dry.SelectMany(s => owner.View.ValvesOf(s)).Select(v => pipes.DownNodeOf(v.Id)).OfType<int>().Where(n => n != node).ToList();
        var water = StoredWater.Above(parted, node, entries);
        if (!water.Succeeded)
        {
            return null;
        }

        if (water.Value.MostCubicMetres <= 0)
        {
            return new HoleAnswer("the heights that are noted: nothing behind what is shut stands higher than this place", 0, 0, 0, 0, []);
        }

        var port = Opening.Hole(Book.PortMillimetres / 1000, Book.PortDischargeLeast, Book.PortDischargeMost).Empty(water.Value);
        var pump = Units.From(Book.PumpLitresPerMinute, "L/min");
        return new HoleAnswer("the heights and sizes of the pipes behind what is shut", port.LeastCubicMetres, port.MostCubicMetres, port.LeastSeconds, port.MostSeconds, Ways(port, Opening.Pump(pump, pump).Empty(water.Value)));
    }

    private List<HoleWay> Ways(EmptyingEstimate wait, EmptyingEstimate? pump)
    {
        var ways = new List<HoleWay>
        {
            After("wait until it has run out", wait.LeastSeconds / 60, wait.MostSeconds / 60, "the bleed stays open"),
            new("work wet", RepairMinutes * Book.WetFactor, RepairMinutes * Book.WetFactor, "zero pressure is proved, nothing muddy can flow back into the main, nobody can energise the valve"),
        };
        if (Book.PumpOwned)
        {
            var (least, most) = pump is { } known ? (known.LeastSeconds, known.MostSeconds) : (0, wait.MostSeconds);
            ways.Add(After("pump to below the bonnet", Book.PumpReadyMinutes + (least / 60), Book.PumpReadyMinutes + (most / 60), "the water goes where it harms nobody; a pump on mains power has an earth-fault breaker and nobody stands in the water"));
        }

        return [.. ways.OrderBy(w => w.LeastMinutes + w.MostMinutes)];
    }

    private HoleWay After(string say, double least, double most, string condition) => new(say, least + RepairMinutes, most + RepairMinutes, condition) { Before = (least, most) };
}
