using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Reasoning.Translation;
using Underturf.Simulation;
using Underturf.Simulation.Trials;
using Underturf.Tests.Reasoning;

namespace Underturf.Tests.Simulation.Trials;

/// <summary>Scoring on cases made by hand; every number here is invented.</summary>
public sealed class TrialScoresTests
{
    private static readonly PracticeBook Book = PracticeBook.Default;
    private static readonly PropertyView View = PropertyHistory.Fold(Site.Line().Log().Standing).Now;
    private static readonly IReadOnlyList<StationPath> Paths = new PathFinder(View, Book).All();
    private static readonly Statements Reader = new(View, Book, new Mending(new TrueWiring(Paths, [], Book, new TrueNumbers(Book, 1)), Paths.ToDictionary(p => p.Station)));

    [Fact]
    public void Explanations_that_ask_for_the_same_repair_at_the_same_place_are_one_class()
    {
        var said = Reader.Of(Question(
            Explanation("parted-splice", 0.4, ("box 1", 0.75), ("box 2", 0.25)),
            Explanation("bad-splice", 0.3, ("box 1", 1)),
            Explanation("stuck-shut", 0.2, ("box 3", 1)),
            Explanation("as-built", 0.1)));
        Assert.Equal(new RepairClass("splice remade", "box 1"), said.Top.Key);
        Assert.Equal(0.6, said.Top.Value, 1e-12);
        Assert.Equal(0.2, said.Classes[new RepairClass("valve rebuilt", null)], 1e-12);
        Assert.Equal(0.1, said.Classes[RepairClass.Nothing], 1e-12);
    }

    [Fact]
    public void A_wrong_note_beside_a_fault_asks_for_no_repair_of_its_own()
    {
        var said = Reader.Of(Question(Explanation("misread + parted-splice", 0.9, ("box 1", 1)), Explanation("misread", 0.1)));
        Assert.Equal(new RepairClass("splice remade", "box 1"), said.Top.Key);
        Assert.Equal(0.1, said.Classes[new RepairClass("reading repeated", null)], 1e-12);
    }

    [Fact]
    public void A_class_is_right_where_its_repair_at_its_place_is_what_is_needed()
    {
        TrueFault[] faults = [new("bad-splice", "s1", null, "b1", 40, 0, []), new("stuck-shut", "s1", null, null, 0, 0, [])];
        Assert.True(Reader.IsRight(new RepairClass("splice remade", "box 1"), faults));
        Assert.False(Reader.IsRight(new RepairClass("splice remade", "box 2"), faults));
        Assert.True(Reader.IsRight(new RepairClass("valve rebuilt", null), faults));
        Assert.True(Reader.IsRight(new RepairClass("splice remade + valve rebuilt", "box 1"), faults));
        Assert.False(Reader.IsRight(new RepairClass("coil replaced + splice remade", "box 1"), faults));
        Assert.False(Reader.IsRight(RepairClass.Nothing, faults));
        Assert.True(Reader.IsRight(RepairClass.Nothing, []));
        Assert.False(Reader.IsRight(RepairClass.Unknown, []));
    }

    [Fact]
    public void A_stretch_to_be_mended_is_right_where_the_faulty_splice_is_buried_in_it()
    {
        var conductor = Book.Faults.First(f => f.Scope == FaultScope.Conductor && f.Repair == "conductor mended");
        var truth = Paths.Select(p => p.Station == "s3" ? Buried(p) : p).ToList();
        var reader = new Statements(View, Book, new Mending(new TrueWiring(truth, [], Book, new TrueNumbers(Book, 1)), Paths.ToDictionary(p => p.Station)));
        TrueFault[] faults = [new("bad-splice", "s3", null, "x1", 40, 0, [])];
        Assert.True(reader.IsRight(new RepairClass(conductor.Repair, "box 2"), faults));
        Assert.False(reader.IsRight(new RepairClass(conductor.Repair, "box 1"), faults));
    }

    [Fact]
    public void Rates_alone_are_a_distribution_over_classes_of_the_stations_own_places()
    {
        var path = Paths.First(p => p.Station == "s3");
        var said = new BaseRates(View, Book).Of(path);
        Assert.Equal(1, said.Classes.Values.Sum(), 1e-12);
        Assert.Equal(["box 1", "box 2"], said.Classes.Keys.Select(c => c.Place).OfType<string>().Distinct().Order());
    }

    [Fact]
    public void The_calibration_error_weighs_each_bin_by_its_size()
    {
        var said = Enumerable.Range(0, 8).Select(i => Line(i < 6, 0.95, 0.5)).Concat([Line(false, 0.25, 0.5), Line(true, 0.25, 0.5)]);

        // Eight at .95 of which .75 are right, two at .25 of which half are.
        Assert.Equal((0.8 * 0.2) + (0.2 * 0.25), TrialScores.CalibrationError(said), 1e-12);
    }

    [Fact]
    public void The_log_score_is_a_mean_with_a_floor()
    {
        Assert.Equal((Math.Log(0.5) + Math.Log(1e-3)) / 2, TrialScores.LogScore([Line(true, 0.9, 0.5), Line(false, 0.9, 0)], s => s.Truth), 1e-12);
        Assert.Equal(0.5, TrialScores.TopRight([Line(true, 0.9, 0.5), Line(false, 0.9, 0)]));
    }

    /// <summary>The last leg with a splice in its middle that nobody noted.</summary>
    private static StationPath Buried(StationPath path)
    {
        var last = path.Legs[^1];
        var (near, far) = (last with { Id = "x", To = "x1", LengthMetres = last.LengthMetres / 2 }, last with { From = "x1", LengthMetres = last.LengthMetres / 2, Parent = path.Legs.Count - 1 });
        return path with { Legs = [.. path.Legs.SkipLast(1), near, far], Valves = [.. path.Valves.Select(v => v with { Leg = path.Legs.Count })] };
    }

    private static ScoredStatement Line(bool right, double top, double truth) =>
        new(["s1"], RepairClass.Nothing, right) { Stated = new StatedChances(top, truth, truth, truth) };

    private static Explanation Explanation(string fault, double probability, params (string Place, double Share)[] places) =>
        new(fault, probability, string.Empty, [.. places.Select(p => new PlaceProbability(p.Place, p.Share))], [], string.Empty);

    private static OpenQuestion Question(params Explanation[] explanations) => new("q", string.Empty, ["1"], explanations, [], [], false);
}
