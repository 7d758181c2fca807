using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Reasoning.Translation;
using Underturf.Simulation.Trials;
using Underturf.Tests.Reasoning;

namespace Underturf.Tests.Simulation.Trials;

/// <summary>Rules of thumb on one invented question of station 5, whose wires pass boxes 1 and 2 and end in box 3.</summary>
public sealed class RuleOfThumbTests
{
    private static readonly PropertyView View = PropertyHistory.Fold(Site.Line().Log().Standing).Now;

    [Theory]
    [InlineData("controller outwards", "b1")]
    [InlineData("halve the run", "b2")]
    [InlineData("nearest first", "b3")]
    [InlineData("most likely first", "b3")]
    [InlineData("cheapest first", "b3")]
    [InlineData("notebook", "b2")]
    public void Each_rule_takes_the_candidate_that_it_is_named_after(string policy, string place) =>
        Assert.Equal(place, Choose(policy, Question(false, Move("b1", 8, 40), Move("b2", 9, 60), Move("b3", 5, 20))));

    [Fact]
    public void Every_rule_repairs_as_soon_as_enough_is_known() =>
        Assert.All(Policies.RulesOfThumb, p => Assert.Equal("b1", Choose(p.Name, Question(true, Move("b1", 25, 140), Move("b3", 5, 20)))));

    [Fact]
    public void No_rule_makes_a_move_that_tells_nothing_or_goes_on_where_none_is_worth_its_minutes()
    {
        Assert.All(Policies.RulesOfThumb, p => Assert.Equal("b2", Choose(p.Name, Question(false, Move("b1", 1, 0.5), Move("b2", 9, 60), Move("b3", 0.5, 0.2)))));
        Assert.All(Policies.All, p => Assert.Null(Choose(p.Name, Question(false, Move("b1", 8, 7), Move("b2", 9, 5)))));
    }

    private static string? Choose(string policy, OpenQuestion question)
    {
        var paths = new PathFinder(View, PracticeBook.Default).All().ToDictionary(p => p.Station);
        var moves = question.Moves.Where(m => m.Worth > m.Minutes).OrderByDescending(m => m.Worth - m.Minutes).ToList();

        // He stands at box 3.
        double Walk(string place) => place == "b3" ? 0 : 3;
        return Policies.All.First(p => p.Name == policy).Choose(new TrialScene(new Answers("1", "1", [question], moves), View, paths, PracticeBook.Default, Walk))?.Place;
    }

    private static Move Move(string place, double minutes, double worth) => new("look", View.Name(place), minutes, worth, string.Empty, "q")
    {
        Place = place,
        Steps = [new MoveStep("look", minutes, string.Empty, "q", new LookFact { Place = place })],
    };

    private static OpenQuestion Question(bool settled, params Move[] moves) => new(
        "q",
        string.Empty,
        ["5"],
        [new Explanation("parted-splice", 1, string.Empty, [new PlaceProbability("box 3", 0.45), new PlaceProbability("box 1", 0.35), new PlaceProbability("box 2", 0.2)], [], string.Empty)],
        [],
        moves,
        settled);
}
