using System.Globalization;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>
/// Notes of the water that cannot all be right, whatever is wrong with the property: water loses pressure on its way and never gains any but downhill, nothing
/// is lost where nothing flows, and nothing flows behind what is shut.
/// </summary>
internal sealed class WaterConflicts(WaterCase owner, IReadOnlyList<WaterReading> readings)
{
    private readonly WaterSay say = new(owner.History.Facts.UsesUsUnits);

    private PropertyView View => owner.View;

    public IReadOnlyList<WaterConflict> Find()
    {
        WaterConflict[] found = [.. readings.SelectMany(r => Above(r).Concat(WithoutFlow(r)).Concat(BehindShut(r)))];
        var wrong = Wrong([.. found.Where(c => c.Other is not null)]);
        return [.. found.Select(c => c with { LeavesOut = c.Other is null ? [c.Reading] : [.. new[] { c.Other, c.Reading }.Where(wrong.Contains)] })];
    }

    /// <summary>A reading that more speak against than against any other is the wrong one; where as many do, either may be.</summary>
    private static HashSet<WaterReading> Wrong(List<WaterConflict> left)
    {
        var wrong = new HashSet<WaterReading>();
        while (left.Count > 0)
        {
            var against = left.SelectMany(c => new[] { c.Reading, c.Other! }).CountBy(r => r).ToList();
            var most = against.Max(a => a.Value);
            wrong.UnionWith(against.Where(a => a.Value == most).Select(a => a.Key));
            left.RemoveAll(c => wrong.Contains(c.Reading) || wrong.Contains(c.Other!));
        }

        return wrong;
    }

    /// <summary>More pressure while water runs than with nothing running, or at an outlet than where the water comes in.</summary>
    private IEnumerable<WaterConflict> Above(WaterReading high)
    {
        if (high.Probe.Measures is not (WaterMeasure.RunningPressure or WaterMeasure.OutletPressure))
        {
            yield break;
        }

        var outlet = high.Probe.Measures == WaterMeasure.OutletPressure;
        var fall = outlet ? Fall(high.Station!) : 0;
        foreach (var low in readings.Where(r => r.Probe.Measures == WaterMeasure.StaticPressure || (outlet && r.Probe.Measures == WaterMeasure.RunningPressure && r.Running.SequenceEqual(high.Running))).Where(r => IsBeside(r, high)))
        {
            if (high.Si - low.Si - ((fall ?? 0) * owner.Fluid.PascalsPerMetre) > Apart(high, low))
            {
                var why = outlet
                    ? $"more at an outlet than at the point of connection could be only {(fall is null ? $"if it lay {say.Height((high.Si - low.Si) / owner.Fluid.PascalsPerMetre)} lower, and no heights are noted" : $"if it lay {say.Height((high.Si - low.Si) / owner.Fluid.PascalsPerMetre)} lower, not {say.Height(fall.Value)}")}"
                    : "water that runs loses pressure, it gains none";
                yield return new WaterConflict(high, low, low.Moment.Entry.ToString(), $"{Told(high)} is above {Told(low)}: {why}");
            }
        }
    }

    /// <summary>Pressure lost on the way while the meter showed that nothing ran.</summary>
    private IEnumerable<WaterConflict> WithoutFlow(WaterReading running) =>
        from meter in running.Probe.Measures == WaterMeasure.RunningPressure ? readings : []
        where meter.Probe.Measures == WaterMeasure.MeterFlow && meter.Running.SequenceEqual(running.Running) && meter.Si < owner.Book.Questions.DisagreeSpreads * meter.Sigma && IsBeside(meter, running)
        let rest = readings.LastOrDefault(r => r.Probe.Measures == WaterMeasure.StaticPressure && IsBeside(r, running))
        where rest is not null && rest.Si - running.Si > Apart(rest, running)
        select new WaterConflict(running, meter, meter.Moment.Entry.ToString(), $"{Told(running)} is below {Told(rest)}, but by {Told(meter)} next to nothing ran: no pressure is lost without flow");

    /// <summary>Water that ran where something on the way stood shut: beyond what runs with everything off.</summary>
    private IEnumerable<WaterConflict> BehindShut(WaterReading reading)
    {
        if (reading.Station is not { } station || reading.Shut.Count == 0 || reading.Probe.Measures is not (WaterMeasure.MeterFlow or WaterMeasure.OutletPressure) || ShutBefore(station, reading.Shut) is not { } shut)
        {
            yield break;
        }

        var idle = reading.Probe.Measures == WaterMeasure.MeterFlow ? readings.Where(r => r.Probe.Measures == WaterMeasure.MeterFlow && r.IsIdle).Select(r => r.Si).DefaultIfEmpty().Max() : 0;
        if (reading.Si - idle > owner.Book.Questions.DisagreeSpreads * reading.Sigma && TurnedAt(shut, reading) is { } entry)
        {
            yield return new WaterConflict(reading, null, entry, $"{Told(reading)} cannot be while {View.Name(shut)} before it stands shut ({entry}): that was opened and nobody noted it, or it does not hold");
        }
    }

    /// <summary>What stands shut before every valve of a station; nothing where water may come.</summary>
    private string? ShutBefore(string station, IReadOnlySet<string> shut)
    {
        var reached = owner.Graph.Reached(shut.Contains);
        var by = View.ValvesOf(station).Select(v => v.Id).DefaultIfEmpty(station).Select(v => ShutBefore(station, v, shut, reached)).ToList();
        return by.TrueForAll(b => b is not null) ? by[0] : null;
    }

    private string? ShutBefore(string station, string valve, IReadOnlySet<string> shut, HashSet<string> reached) => shut.Contains(valve) ? valve
        : owner.Graph.Reached(_ => false).Contains(valve) ? (reached.Contains(valve) ? null : shut.Where(owner.Graph.Knows).Order(NaturalOrder.Instance).FirstOrDefault(s => !owner.Graph.Reached(other => other == s).Contains(valve)) ?? shut.Where(owner.Graph.Knows).Order(NaturalOrder.Instance).FirstOrDefault())
        : shut.Where(View.IsolationValves.ContainsKey).Order(NaturalOrder.Instance).FirstOrDefault(i => owner.LiesBehind(i, [valve, station]) == true);

    private string? TurnedAt(string valve, WaterReading reading) =>
        owner.History.Facts.Settings.Where(s => View.Identity.Of(s.Fact.Of) == valve && s.Moment <= reading.Moment).MaxBy(s => s.Moment)?.Entry.ToString();

    /// <summary>How far the lowest outlet of a station lies below the point of connection; nothing where heights are not noted.</summary>
    private double? Fall(string station)
    {
        var outlets = View.Outlets.Where(o => View.Identity.Of(o.Value.Station) == station).Select(o => owner.Heights.OfOutlet(o.Key)).OfType<double>().ToList();
        return outlets.Count > 0 && owner.Heights.Noted(owner.MeterPlace) is { } supply ? supply - outlets.Min() : null;
    }

    /// <summary>No work was done and nothing turned between.</summary>
    private bool IsBeside(WaterReading one, WaterReading other) =>
        one.Shut.SetEquals(other.Shut) && !owner.History.Facts.Works.Any(w => w.Moment <= one.Moment != (w.Moment <= other.Moment));

    private double Apart(WaterReading one, WaterReading other) => owner.Book.Questions.DisagreeSpreads * double.Hypot(one.Sigma, other.Sigma);

    /// <summary>"running pressure of 70 psi with station 1 running (maren/12)".</summary>
    private string Told(WaterReading reading) => string.Create(CultureInfo.InvariantCulture,
        $"{reading.Probe.Name} of {reading.Text}{(reading.IsIdle ? string.Empty : $" with {string.Join(" and ", reading.Running.Select(View.Name))} running")} ({reading.Moment.Entry})");
}

/// <summary>Notes that cannot all be right.</summary>
/// <param name="Other">The reading against it; null where that is a note of something shut.</param>
/// <param name="OtherEntry">Id of that note.</param>
/// <param name="Why">All of them beside each other.</param>
internal sealed record WaterConflict(WaterReading Reading, WaterReading? Other, string OtherEntry, string Why)
{
    /// <summary>Readings that count for nothing until they are taken again.</summary>
    public IReadOnlyList<WaterReading> LeavesOut { get; init; } = [];

    /// <summary>What follows from it.</summary>
    public string Follows => LeavesOut.Count == 1 ? $"{LeavesOut[0].Probe.Name} of {LeavesOut[0].Text} counts for nothing" : "neither counts";
}
