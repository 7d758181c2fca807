using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Tests.Property;

namespace Underturf.Tests.Reasoning;

/// <summary>Places by taped distances, on an invented yard: a shed with corners at whole metres, a wall, two trees.</summary>
public sealed class TiedPlacesTests
{
    private static readonly Position valve = new(8, -3);

    private static readonly Fact[] yard =
    [
        new PropertyFact { Name = "Yard", Zone = "Etc/UTC", Units = "si" },
        new GroundFact { Id = "shed", What = "building", Label = "the shed", Shape = [new(0, 0), new(6, 0), new(6, 4), new(0, 4)] },
        new GroundFact { Id = "oak", What = "tree", Label = "the oak", Shape = [new(14, -8)] },
        new GroundFact { Id = "elm", What = "tree", Label = "the elm", Shape = [new(16, 2)] },
        new GroundFact { Id = "far", What = "tree", Label = "a far tree", Shape = [new(200, 2)] },
        new GroundFact { Id = "lawn", What = "lawn", Label = "the lawn", Shape = [new(9, -4), new(9, -2), new(30, -2)] },
        new BoxFact { Id = "b7", Label = "7" },
    ];

    [Fact]
    public void Exact_ties_give_the_exact_place_and_say_nothing_is_off()
    {
        var place = Of(Tie("oak"), Tie("elm"), Corner(6, 0), Corner(0, 0));
        Assert.Equal(TieState.Placed, place.State);
        Near(valve, place.Spot!.At, 1e-6);
        Assert.All(place.Ties, tie => Assert.Equal(0, tie.OffMetres!.Value, 1e-6));
        Assert.Empty(place.Doubts);
        Assert.Equal(Grade.Measured, place.Grade);
    }

    [Fact]
    public void Two_ties_leave_two_places_and_a_third_decides()
    {
        var two = Of(Tie("oak"), Tie("elm"));
        Assert.Equal(TieState.TwoPlaces, two.State);
        Assert.Equal(2, two.Spots.Count);
        Assert.Contains(two.Spots, spot => spot.At.DistanceMetresTo(valve) < 1e-3);
        Assert.Null(two.Spot);

        var three = Of(Tie("oak"), Tie("elm"), Corner(6, 0));
        Assert.Null(three.Decided);
        Near(valve, three.Spot!.At, 1e-3);
    }

    [Fact]
    public void A_place_in_a_building_or_behind_it_is_not_the_one()
    {
        var place = Of(Corner(0, 0), Corner(6, 0));
        Assert.Equal("on the other side the shed would be in the way", place.Decided);
        Near(valve, place.Spot!.At, 1e-3);
    }

    [Theory]
    [InlineData(Grade.Told)]
    [InlineData(Grade.Estimated)]
    public void A_place_told_or_a_hint_of_the_device_decides_but_does_not_move_what_was_taped(Grade grade)
    {
        var place = Of(new BoxFact { Id = "b7", Position = new(5, -6), Sure = grade }, Tie("oak"), Tie("elm"));
        Assert.Equal("its place on the plan decides", place.Decided);
        Near(valve, place.Spot!.At, 1e-3);
        Assert.Equal(new Position(5, -6), place.NotedAt);
    }

    [Fact]
    public void A_single_tie_leaves_a_ring_and_a_mark_without_a_point_leaves_nothing()
    {
        Assert.Equal(TieState.Ring, Of(Tie("oak")).State);
        Assert.Equal(TieState.NoMark, Of(new TieFact { Thing = "b7", Mark = "shed", Distance = new Length(4) }).State);
    }

    [Fact]
    public void Of_five_ties_the_wrong_one_is_named_and_left_out()
    {
        var place = Of(Tie("oak"), Tie("elm"), Corner(6, 4), Corner(6, 0), Corner(0, 0, more: 1.4));
        var doubt = Assert.Single(place.Doubts);
        Assert.Equal(("the tie from the south-west corner of the shed is 1.4 m off what the others say", "Tape it again"), (doubt.Reason, doubt.Remedy));
        Near(valve, place.Spot!.At, 0.01);
        Assert.Equal([false, false, false, false, true], place.Ties.OrderBy(tie => tie.LeftOut).Select(tie => tie.LeftOut));
    }

    [Fact]
    public void Of_three_that_do_not_agree_nobody_knows_which_is_wrong_so_all_count_for_less()
    {
        var (good, bad) = (Of(Tie("oak"), Tie("elm"), Corner(6, 0)), Of(Tie("oak"), Tie("elm"), Corner(6, 0, more: 1.4)));
        Assert.StartsWith("its ties do not agree: the one from ", Assert.Single(bad.Doubts).Reason, StringComparison.Ordinal);
        Assert.DoesNotContain(bad.Ties, tie => tie.LeftOut);
        Assert.True(bad.Spots[0].LongMetres > 3 * good.Spots[0].LongMetres);
    }

    [Fact]
    public void Two_ties_that_do_not_reach_each_other_are_named() =>
        Assert.Equal("the ties from the elm and from the oak miss each other by 2.2 m", Assert.Single(Of(Far("oak", 4), Far("elm", 4)).Doubts).Reason);

    [Fact]
    public void Ties_far_from_the_place_on_the_plan_are_named_as_the_better()
    {
        var place = Of(new BoxFact { Id = "b7", Position = new(40, -3) }, Tie("oak"), Tie("elm"), Corner(6, 0));
        Assert.Equal("its ties put it 32.0 m from its place on the plan", Assert.Single(place.Doubts).Reason);
        Assert.Equal("the tie from the oak is 20.6 m off its place on the plan", Assert.Single(Of(new BoxFact { Id = "b7", Position = new(14, -28.6) }, Tie("oak") with { Distance = new Length(41.2) }).Doubts).Reason);
    }

    [Fact]
    public void Paces_count_for_less_than_a_tape_and_a_noted_spread_for_what_it_says()
    {
        var (taped, paced) = (Of(Tie("oak"), Tie("elm"), Corner(6, 0)), Of(Tie("oak") with { Sure = Grade.Estimated }, Tie("elm") with { Sure = Grade.Estimated }, Corner(6, 0)));
        Assert.True(paced.Spot!.LongMetres > 2 * taped.Spot!.LongMetres);
        Assert.Equal(Grade.Estimated, paced.Grade);
        Assert.Equal(0.5, Of(Tie("oak") with { Spread = new Length(0.5) }).Ties[0].SpreadMetres, 0.01);
    }

    [Fact]
    public void A_box_tied_to_a_tied_box_is_placed_with_the_spread_of_both()
    {
        var history = Folded(
            Tie("oak"), Tie("elm"), Corner(6, 0),
            new BoxFact { Id = "b8", Label = "8" },
            Between("b8", new(10, -14), "b7", valve),
            Between("b8", new(10, -14), "oak", new(14, -8)),
            Between("b8", new(10, -14), "elm", new(16, 2)));
        var places = TiedPlaces.Of(history, PracticeBook.Default);
        Near(new(10, -14), places.Find("b8")!.Spot!.At, 1e-3);
        Assert.True(places.Find("b8")!.Ties.Single(tie => tie.Mark == "b7").SpreadMetres > places.Find("b8")!.Ties.Single(tie => tie.Mark == "oak").SpreadMetres);
        Assert.Null(history.Now.PositionOf("b8"));
        Near(new(10, -14), places.View.PositionOf("b8")!.Value, 1e-3);
    }

    [Fact]
    public void A_valve_is_where_the_ties_of_its_box_put_it()
    {
        var history = Folded(new ValveFact { Id = "v1", Box = "b7" }, Tie("oak"), Tie("elm"), Corner(6, 0));
        Near(valve, TiedPlaces.Of(history, PracticeBook.Default).View.PositionOf("v1")!.Value, 1e-3);
    }

    [Fact]
    public void The_best_two_marks_leave_the_smallest_ellipse_of_all_that_can_be_reached_and_seen()
    {
        var place = TiedPlaces.Of(Folded(new BoxFact { Id = "b7", Position = valve }), PracticeBook.Default).Of("b7");
        Assert.Equal(TieState.NotTied, place.State);
        var marks = place.BestMarks!;

        // Seen from the valve they lie nearly at a right angle: (-2, 3) and (8, 5).
        Assert.Equal(["the elm", "the south-east corner of the shed"], new[] { marks.First.Name, marks.Second.Name }.Order(StringComparer.Ordinal));

        // What one sees from the ties taped there is what was promised.
        var taped = Of(new BoxFact { Id = "b7", Position = valve }, Between("b7", valve, marks.First), Between("b7", valve, marks.Second));
        Assert.Equal(marks.LongMetres, taped.Spots[0].LongMetres, 1e-6);
    }

    [Fact]
    public void Soft_edges_far_marks_and_marks_behind_the_shed_are_not_taped_from()
    {
        var only = yard.Where(fact => fact is not GroundFact { Id: "elm" or "oak" }).Append(new BoxFact { Id = "b7", Position = new(3, -5) });
        var marks = TiedPlaces.Of(Fold(only), PracticeBook.Default).Of("b7").BestMarks!;
        Assert.Equal(["the south-east corner of the shed", "the south-west corner of the shed"], new[] { marks.First.Name, marks.Second.Name }.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Where_two_places_fit_a_mark_is_named_that_tells_them_apart()
    {
        var place = TiedPlaces.Of(Folded(Tie("oak"), Tie("elm")), PracticeBook.Default).Of("b7");
        Assert.Equal("shed", place.Deciding!.Mark);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Ellipses_hold_the_truth_95_times_in_100(int count)
    {
        const int Cases = 400;
        var held = Enumerable.Range(1, Cases).Count(seed => Holds((ulong)seed, count));
        Assert.InRange(100.0 * held / Cases, 92, 98);
    }

    /// <summary>Marks, tape and truth drawn by the practice book's own spreads.</summary>
    private static bool Holds(ulong seed, int count)
    {
        var (random, taping) = (new SeededGenerator(seed).Fork("ties"), PracticeBook.Default.Taping);
        var truth = new Position(30 * random.NextDouble(), 30 * random.NextDouble());
        var facts = new List<Fact> { new BoxFact { Id = "b7", Position = new(truth.EastMetres + random.NextNormal(), truth.NorthMetres + random.NextNormal()) } };
        for (var k = 0; k < count; k++)
        {
            var drawn = new Position(40 * random.NextDouble(), 40 * random.NextDouble());
            var stands = new Position(drawn.EastMetres + (taping.MarkMetres.Measured * random.NextNormal()), drawn.NorthMetres + (taping.MarkMetres.Measured * random.NextNormal()));
            var metres = truth.DistanceMetresTo(stands);
            var spread = Math.Sqrt(Math.Pow(taping.TieMetres.Measured, 2) + Math.Pow(taping.TieShare.Measured * metres, 2));
            facts.Add(new GroundFact { Id = $"t{k}", What = "tree", Shape = [drawn] });
            facts.Add(new TieFact { Thing = "b7", Mark = $"t{k}", Distance = new Length(Math.Max(0.1, metres + (spread * random.NextNormal()))) });
        }

        var spot = TiedPlaces.Of(Fold(facts), PracticeBook.Default).Find("b7")!.Spots.MinBy(s => s.At.DistanceMetresTo(truth))!;
        var (east, north) = (truth.EastMetres - spot.At.EastMetres, truth.NorthMetres - spot.At.NorthMetres);
        var (sin, cos) = (Math.Sin(spot.LongBearingDegrees * Math.PI / 180), Math.Cos(spot.LongBearingDegrees * Math.PI / 180));
        return Math.Pow(((east * sin) + (north * cos)) / spot.LongMetres, 2) + Math.Pow(((east * cos) - (north * sin)) / spot.ShortMetres, 2) <= 1;
    }

    private static TiedPlace Of(params Fact[] facts) => TiedPlaces.Of(Folded(facts), PracticeBook.Default).Find("b7")!;

    private static PropertyHistory Folded(params Fact[] facts) => Fold(yard.Concat(facts));

    private static PropertyHistory Fold(IEnumerable<Fact> facts)
    {
        var diary = new Diary();
        foreach (var (minute, fact) in facts.Index())
        {
            diary.Note(minute + 1, fact);
        }

        return diary.Fold();
    }

    private static TieFact Tie(string mark) => Between("b7", valve, mark, yard.OfType<GroundFact>().First(ground => ground.Id == mark).Shape[0]);

    private static TieFact Far(string mark, double metres) => Tie(mark) with { Distance = new Length(metres) };

    private static TieFact Corner(double east, double north, double more = 0) =>
        new() { Thing = "b7", Mark = "shed", Corner = new(east, north), Distance = new Length(new Position(east, north).DistanceMetresTo(valve) + more) };

    private static TieFact Between(string thing, Position at, string mark, Position from) => new() { Thing = thing, Mark = mark, Distance = new Length(at.DistanceMetresTo(from)) };

    private static TieFact Between(string thing, Position at, MarkPoint mark) => new() { Thing = thing, Mark = mark.Mark, Corner = mark.At, Distance = new Length(at.DistanceMetresTo(mark.At)) };

    private static void Near(Position expected, Position actual, double metres) =>
        Assert.True(expected.DistanceMetresTo(actual) <= metres, $"{actual} is {expected.DistanceMetresTo(actual)} m from {expected}");
}
