using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.Tests.Property;

/// <summary>The card of one invented box.</summary>
public sealed class BoxCardTests
{
    private static readonly Fact[] garden =
    [
        new ControllerFact { Id = "c", Terminals = 12 },
        new StationFact { Id = "s9", Controller = "c", Terminal = 9 },
        new BoxFact { Id = "b7", Label = "7", Size = "standard", Note = "Lid cracked." },
        new BoxFact { Id = "b8", Label = "8" },
        new CableFact { Id = "k", From = "b8", To = "b7", Length = Length.FromSi(Units.From(118, "ft")), Gauge = WireSize.FromAwg(18), CommonGauge = WireSize.FromAwg(14), Carries = ["s9"], Sure = Grade.Told },
        new ValveFact { Id = "v", Label = "v1", Box = "b7", Station = "s9", Size = Length.FromSi(Units.From(1.5, "in")), Screws = 6, Sure = Grade.Told },
        new CoilFact { Id = "l", Valve = "v", Ohms = Resistance.FromSi(24) },
        End("e1", "end 1") with { Colour = "red", Gauge = WireSize.FromAwg(18), Station = "s9" },
        End("e2", "end 2") with { Colour = "red", Mates = ["e1"] },
        End("e10", "end 10") with { Colour = "white", Common = true, Cable = "k" },
        new EndFact { Id = "far", Place = "b8", Label = "far", Station = "s9" },
        End("e3", "end 3") with { FarEnd = "far" },
        new SpliceFact { Id = "j", Place = "b7", Joins = ["e2", "e1"], Connector = "tape" },
        new LookFact { Place = "b7", Found = ["sharing device"], Stations = ["s9"] },
        new WorkFact { Did = "splice remade", Place = "b7", Target = "s9" },
        new LeftAsFact { Place = "b7", State = "hole open" }, new LeftAsFact { Place = "b7", State = "closed" },
    ];

    private static BoxCard Card(params Fact[] more)
    {
        var diary = new Diary();
        foreach (var (fact, minute) in garden.Concat(more).Select((fact, i) => (fact, i + 1)))
        {
            diary.Note(minute, fact);
        }

        return BoxCard.Of(diary.Fold(), "b7")!;
    }

    private static EndFact End(string id, string label) => new() { Id = id, Place = "b7", Label = label };

    [Fact]
    public void Ends_that_were_seen_joined_are_one_joint_and_a_loose_end_stands_alone()
    {
        var card = Card();
        Assert.Equal(["end 1 end 2", "end 3", "end 10"], card.Joints.Select(j => string.Join(' ', j.Ends.Select(e => e.Name))));
        Assert.Equal(("tape", true, false), (card.Joints[0].Connector, card.Joints[0].IsJoined, card.Joints[1].IsJoined));
        Assert.Equal((4, 1), (card.EndCount, card.SpliceCount));
    }

    [Fact]
    public void What_an_end_carries_is_its_own_word_or_is_inferred_from_its_mate_or_its_far_end()
    {
        var ends = Card().Joints.SelectMany(j => j.Ends).ToDictionary(e => e.Id);
        Assert.Equal(("station 9", Grade.Measured), (ends["e1"].Carries, ends["e1"].CarriesGrade));
        Assert.Equal(("station 9", Grade.Inferred), (ends["e2"].Carries, ends["e2"].CarriesGrade));
        Assert.Equal(("station 9", Grade.Inferred, "box 8"), (ends["e3"].Carries, ends["e3"].CarriesGrade, ends["e3"].GoesTo));
        Assert.Equal(("common", "box 8"), (ends["e10"].Carries, ends["e10"].GoesTo));
    }

    [Fact]
    public void An_end_is_said_in_words_of_colour_and_gauge()
    {
        var end = Card().Joints[0].Ends[0];
        Assert.Equal(("red", "18 AWG"), (end.Colour, end.Gauge));
    }

    [Fact]
    public void Valves_runs_findings_work_and_the_last_state_stand_on_the_card()
    {
        var card = Card();
        Assert.Equal(("standard", "Lid cracked.", "closed"), (card.Size, card.Remark, card.LeftAs!.Fact.State));
        Assert.Equal(("9", Grade.Told), (card.Valves[0].Station, card.Valves[0].Grade));
        Assert.Equal(["1.5 in", "6 bonnet screws", "coil's plate 24 ohm"], card.Valves[0].Facts);
        Assert.Equal("box 8", card.Runs[0].To);
        Assert.Equal(["118 ft", "18 AWG, common 14 AWG", "carries 9"], card.Runs[0].Facts);
        Assert.Equal(("sharing device", "9"), (card.Found[0].Name, card.Found[0].Stations.Single()));
        Assert.Equal(("splice remade", "station 9"), (card.Done[0].Did, card.Done[0].On));
    }

    [Fact]
    public void A_mate_that_nobody_noted_here_is_counted_as_joined_elsewhere() =>
        Assert.Equal(1, Card(End("e3", "end 3") with { Mates = ["ghost"] }).Joints.Single(j => j.Ends[0].Id == "e3").Elsewhere);

    [Fact]
    public void A_splice_without_conductors_stands_on_the_card_by_itself()
    {
        var joint = Card(new SpliceFact { Id = "j2", Place = "b7", Connector = "gel" }).Joints[^1];
        Assert.Equal((0, "gel"), (joint.Ends.Count, joint.Connector));
    }

    [Fact]
    public void Two_ids_that_are_one_box_have_one_card_and_what_nobody_noted_has_none()
    {
        var diary = new Diary();
        diary.Note(1, new BoxFact { Id = "a", Label = "2" });
        diary.Note(2, new BoxFact { Id = "b", Label = "10" });
        diary.Note(3, new BoxFact { Id = "x", Label = "10" });
        diary.Note(4, new SameAsFact { A = "x", B = "b" });
        diary.Note(5, new EndFact { Id = "e", Place = "x" });
        var history = diary.Fold();
        Assert.Equal(["box 2", "box 10"], BoxCard.All(history).Select(c => c.Name));
        Assert.Equal(1, BoxCard.Of(history, "b")!.EndCount);
        Assert.Null(BoxCard.Of(history, "ghost"));
    }
}
