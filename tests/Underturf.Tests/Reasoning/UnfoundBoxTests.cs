using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Tests.Reasoning;

/// <summary>What sits in a box that nobody has found, somewhere inside a stretch.</summary>
public sealed class UnfoundBoxTests
{
    private const double Coil = 31;

    [Fact]
    public void A_branch_that_is_read_beyond_no_known_box_and_seen_in_none_lies_in_one_that_has_to_be_found()
    {
        var question = Branched().Answer().About(5);
        Assert.StartsWith("plain-branch", question.Leading(), StringComparison.Ordinal);
        Assert.Equal("between box 2 and box 3", question.Explanations[0].Places[0].Label);
        Assert.Contains("in a box that nobody has found", question.Explanations[0].Summary, StringComparison.Ordinal);
        Assert.Contains(question.Moves, m => m.Action.Contains("in a box between box 2 and box 3 that has to be found first", StringComparison.Ordinal));
    }

    [Fact]
    public void It_is_no_joint_at_a_known_box()
    {
        var shared = Assert.Single(Branched().Open().Shared(), s => s.Station == "s5");
        Assert.Contains(shared.Valves, v => v.JointProbability < 0.5);
    }

    [Fact]
    public void Two_conductors_joined_half_way_beyond_the_last_box_that_both_pass_are_told_from_two_joined_in_it()
    {
        double Unfound(double beyond) => Worlds(Forked(beyond), "s1").Where(w => w.Suspects.Any(s => s.IsPair && s.Seat.IsUnfound)).Sum(w => w.Probability);
        Assert.True(Unfound(200) > 0.8, $"{Unfound(200)}");
        Assert.True(Unfound(0) < 0.3, $"{Unfound(0)}");
    }

    [Fact]
    public void A_pair_that_was_seen_to_water_each_others_places_stands_against_one_wrong_figure()
    {
        var site = Forked(200, wrong: true);
        Assert.True(Worlds(site, "s1").Where(w => w.Suspects.Any(s => s.IsPair)).Sum(w => w.Probability) > 0.9);
    }

    [Fact]
    public void A_common_in_a_box_that_nobody_found_is_that_of_stations_beyond_and_of_some_that_were_followed_no_farther()
    {
        var question = Assert.Single(Corroded(onward: true).Answer().Questions);
        Assert.Equal(["1", "2", "3", "4", "5"], question.Stations);
        Assert.Equal("bad-common-splice", question.Leading());
        Assert.Equal("between box 1 and box 2", question.Explanations[0].Places[0].Label);
        Assert.Contains("in a box that nobody has found", question.Explanations[0].Summary, StringComparison.Ordinal);
    }

    [Fact]
    public void Or_of_some_alone_where_no_cable_is_known_to_go_on()
    {
        var question = Assert.Single(Corroded(onward: false).Answer().Questions);
        Assert.Equal(["1", "2", "3", "4", "5"], question.Stations);
        Assert.Contains("in a box that nobody has found, farther on", question.Explanations[0].Summary, StringComparison.Ordinal);
    }

    /// <summary>Ten stations were followed to box 1, or the first three of them on to box 2; the first five return by a splice of 40 ohms that lies farther on than box 1.</summary>
    private static Site Corroded(bool onward)
    {
        var site = Site.Bare();
        site.Add(new BoxFact { Id = "b1", Label = "box 1", Position = new Position(60, 0) });
        site.Add(new BoxFact { Id = "b2", Label = "box 2", Position = new Position(120, 0) });
        site.Cable("k1", "c", "b1", 60, [.. Enumerable.Range(1, 10).Select(s => $"s{s}")]);
        if (onward)
        {
            site.Cable("k2", "b1", "b2", 60, "s1", "s2", "s3");
        }

        for (var s = 1; s <= 10; s++)
        {
            var legs = onward && s <= 3 ? 2 : 1;
            site.Station(s).Read("station ohms", Site.Ohms(Site.SoundOhms(60 * legs, legs) + (s <= 5 ? 40 : 0)), $"s{s}");
        }

        return site;
    }

    /// <summary>A further valve on station 5, 30 m before its own.</summary>
    private static Site Branched()
    {
        var parallel = 1 / ((1 / (Coil + Site.WireOhms(30, 1))) + (1 / (Coil + Site.WireOhms(15, 1))));
        var site = Site.Line().Sweep(60, (5, Site.Ohms(Site.WireOhms(150, 3) + parallel))).Run(5, "opens", "lawn 5", "the hedge");
        return site
            .ReadAt("b2", "outward ohms", Site.Ohms(Site.WireOhms(30, 1) + parallel), "s5")
            .ReadAt("b3", "outward ohms", "31.0 ohm", "s5")
            .With(Nothing("b1")).With(Nothing("b2")).With(Nothing("b3")).With(Nothing("b2")).With(Nothing("b3"));
    }

    private static LookFact Nothing(string place) => new() { Place = place, Stations = ["s5"] };

    /// <summary>Stations 1 and 2 go on from box 1 by 300 m each, and are joined so many metres beyond it.</summary>
    private static Site Forked(double beyond, bool wrong = false)
    {
        var site = Site.Bare();
        foreach (var (box, x, y) in new[] { ("b1", 100, 0), ("b2", 340, 180), ("b3", 340, -180) })
        {
            site.Add(new BoxFact { Id = box, Label = $"box {box[1..]}", Position = new Position(x, y) });
        }

        for (var s = 1; s <= 6; s++)
        {
            site.Station(s).With(new ValveFact { Id = $"v{s}", Box = s % 2 == 1 ? "b2" : "b3", Station = $"s{s}" });
        }

        site.Cable("k1", "c", "b1", 100, "s1", "s2", "s3", "s4", "s5", "s6").Cable("k2", "b1", "b2", 300, "s1", "s3", "s5").Cable("k3", "b1", "b3", 300, "s2", "s4", "s6");
        var (sound, joined) = (Site.Ohms(Coil + Site.WireOhms(400, 2)), Site.Ohms(Site.WireOhms(100 + beyond, 1) + ((Coil + Site.WireOhms(300 - beyond, 1)) / 2)));
        for (var s = 3; s <= 6; s++)
        {
            site.Read("station ohms", sound, $"s{s}");
        }

        return site
            .Read("station ohms", joined, "s1").Read("station ohms", wrong ? sound : joined, "s2")
            .Run(1, "opens", "lawn 1", "lawn 2").Run(2, "opens", "lawn 2", "lawn 1");
    }

    private static IReadOnlyList<World> Worlds(Site site, string station) =>
        BeliefEngine.Of(new Case(PropertyHistory.Fold(site.Log().Standing), PracticeBook.Default), "c").Stations[station];
}
