using System.Text;
using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Simulation;

/// <summary>Whole properties as one takes them over. Seeds below 5000: nothing is reported on them.</summary>
public sealed class WholeWorldTests(ITestOutputHelper output)
{
    private static readonly PracticeBook Book = PracticeBook.Default;

    [Theory]
    [InlineData(10, 1)]
    [InlineData(45, 1)]
    [InlineData(300, 2)]
    public void A_property_has_its_stations_controllers_ground_and_one_to_six_faults(int stations, int controllers)
    {
        var world = WorldGenerator.Make(31, Book, WorldShape.Whole(stations, null));
        var view = PropertyHistory.Fold(world.Log.Standing).Now;
        Assert.Equal((stations, controllers), (view.Stations.Count, view.Controllers.Count));
        Assert.InRange(world.Faults.Count, 1, 6);
        Assert.All(["building", "hardscape", "bed", "lawn", "tree"], what => Assert.Contains(view.Ground.Values, g => g.What == what));
        Assert.All(view.Ground.Values.Where(g => g.What == "tree"), t => Assert.InRange(t.Trunk!.Value.Metres, 0.05, 1));
        Assert.Equal(controllers, world.Log.Entries.Count(e => e.Fact is ReadingFact { How: "idle volts" }));
    }

    [Fact]
    public void The_same_seed_makes_the_same_log_and_the_same_truth()
    {
        foreach (var stations in new[] { 10, 130 })
        {
            var (a, b) = (WorldGenerator.Make(32, Book, WorldShape.Whole(stations, null)), WorldGenerator.Make(32, Book, WorldShape.Whole(stations, null)));
            Assert.True(a.Log.ToBytes().Span.SequenceEqual(b.Log.ToBytes().Span));
            Assert.Equal(a.TruthBytes(32), b.TruthBytes(32));
        }
    }

    /// <summary>Swapped leads over a half-wave device rightly read differently; that `check` takes them for one reading is a matter of belief.</summary>
    [Fact]
    public void Nothing_is_wrong_with_a_log_but_its_wrong_notes()
    {
        for (var seed = 101UL; seed <= 120; seed++)
        {
            foreach (var stations in new[] { 10, 50, 130 })
            {
                var world = WorldGenerator.Make(seed, Book, WorldShape.Whole(stations, null));
                var devices = world.Faults.Where(f => f.Device is not null).SelectMany(f => new[] { f.Station, f.Other }).ToHashSet();
                var turned = world.Log.Entries.Where(e => e.Fact is ReadingFact { How: "reversed ohms" } r && devices.Contains(r.Stations[0])).Select(e => e.Id);
                var known = world.WrongNotes.Concat(turned).Select(e => $"{e}").ToHashSet();
                Assert.All(Notebook.Open(world.Log, Book).Problems, p => Assert.True(p.Place.Split(" and ").Any(known.Contains), $"seed {seed}, {stations} stations: {p}"));
            }
        }
    }

    [Fact]
    public void What_is_buried_stands_in_the_truth_only()
    {
        var hidden = 0;
        foreach (var world in Many(12, 60))
        {
            var log = Encoding.UTF8.GetString(world.Log.ToBytes().Span);
            foreach (var box in world.Plan!.Boxes)
            {
                Assert.Equal(!box.Buried, log.Contains($"\"{box.Id}\"", StringComparison.Ordinal));
                hidden += box.Buried ? 1 : 0;
            }

            Assert.DoesNotContain("\"x", log, StringComparison.Ordinal);
            Assert.DoesNotContain("moreCoils", log, StringComparison.Ordinal);
            Assert.Equal(world.Plan.Boxes.Any(b => b.Buried), Encoding.UTF8.GetString(world.TruthBytes(1)).Contains("\"buried\": true", StringComparison.Ordinal));
        }

        Assert.True(hidden > 12);
    }

    [Fact]
    public void Properties_are_built_in_phases_with_their_own_wire_coils_and_sometimes_common()
    {
        var plans = Many(30, 80).Select(w => w.Plan!).ToList();
        Assert.Equal([1, 2, 3, 4], plans.Select(p => p.Phases.Count).Distinct().Order());
        Assert.Contains(plans, p => p.Stations.Select(p.CommonOf).Distinct().Count() > 1);
        Assert.Contains(plans, p => p.Phases.Select(f => f.StationAwg).Distinct().Count() > 1);
        Assert.All(plans, p => Assert.Equal(p.Phases.Count, p.Phases.Select(f => f.CoilOhms).Distinct().Count()));
        Assert.Contains(plans.SelectMany(p => p.Runs.Values), r => r.ChangesAt is not null && r.Awg != r.ThenAwg);
    }

    [Fact]
    public void Old_phases_give_more_trouble_most_of_all_in_splices_and_coils()
    {
        var phases = Enumerable.Range(1, 400).SelectMany(s => Phase.Draw(new SeededGenerator((ulong)s), new TrueNumbers(Book, (ulong)s), 100)).ToList();
        double Grows(FaultScope scope) => phases.Where(p => p.Years > 30).Average(p => p.Trouble(scope)) / phases.Where(p => p.Years < 10).Average(p => p.Trouble(scope));
        output.WriteLine($"Over 30 years against under 10: splices {Grows(FaultScope.Splice):F1}, coils {Grows(FaultScope.Coil):F1}, conductors {Grows(FaultScope.Conductor):F1} times the trouble.");
        Assert.True(Grows(FaultScope.Coil) > 4 && Grows(FaultScope.Splice) > 4 && Grows(FaultScope.Conductor) > 2);
    }

    [Fact]
    public void Boxes_lie_near_hardscape_building_corners_and_in_beds_rather_than_anywhere()
    {
        var (near, count) = (0, 0);
        foreach (var plan in Many(30, 60).Select(w => w.Plan!))
        {
            var beside = plan.Terrain.Of("hardscape").Concat(plan.Terrain.Of("building")).Concat(plan.Terrain.Of("bed")).ToList();
            near += plan.Boxes.Count(b => beside.Any(p => Away(p, b.At) < 2));
            count += plan.Boxes.Count;
        }

        output.WriteLine($"{near} of {count} boxes within 2 m of hardscape, building or bed.");
        Assert.InRange((double)near / count, 0.6, 0.95);
    }

    [Fact]
    public void Two_faults_on_one_station_are_drawn_where_they_are_asked_for()
    {
        int Doubles(double share) => Enumerable.Range(1, 30)
            .Select(s => WorldGenerator.Make((ulong)s, Book, WorldShape.Whole(20, 4) with { SameStationShare = share }))
            .Count(w => w.Faults.Where(f => f.Station is not null).GroupBy(f => f.Station).Any(g => g.Count() > 1));
        Assert.Equal(0, Doubles(0));
        Assert.InRange(Doubles(0.5), 15, 30);
    }

    private static IEnumerable<World> Many(int count, int stations) =>
        Enumerable.Range(200, count).Select(s => WorldGenerator.Make((ulong)s, Book, WorldShape.Whole(stations, null)));

    private static double Away(Patch patch, Position at) => double.Hypot(
        Math.Max(0, Math.Max(patch.EastMetres - at.EastMetres, at.EastMetres - patch.EastMetres - patch.WideMetres)),
        Math.Max(0, Math.Max(patch.NorthMetres - at.NorthMetres, at.NorthMetres - patch.NorthMetres - patch.DeepMetres)));
}
