using Underturf.Planning.Choosing;
using Underturf.Tests.FieldLog;

namespace Underturf.Tests.Planning;

public sealed class ChoiceTests
{
    [Fact]
    public void The_choice_costs_what_trying_everything_finds_to_be_the_least() => Cases.Each(RandomChoices.Small, 400, program =>
    {
        var result = new BranchAndBound().Solve(program);
        Assert.Equal((RandomChoices.Least(program), true), (result.Cost, result.IsBest));
        Assert.Equal(result.Cost, program.CostOf(result.Chosen));
    });

    [Fact]
    public void Broken_off_early_it_still_gives_a_choice_and_a_bound_that_holds() => Cases.Each(RandomChoices.Small, 200, program =>
    {
        var result = new BranchAndBound(mostNodes: 3).Solve(program);
        Assert.Equal(result.Cost, program.CostOf(result.Chosen));
        Assert.InRange(RandomChoices.Least(program), result.Bound, result.Cost);
    });

    /// <summary>Two spares, three valves: the dear one to keep gets the spare though the others could use it too. Worked by hand: 10 + 20 + 30.</summary>
    [Fact]
    public void A_scarce_thing_goes_where_it_saves_most()
    {
        ChoiceOption Keep(long cost) => new(cost, []);
        var program = new ChoiceProgram([[new(10, [0]), Keep(100)], [new(10, [0]), new(20, [1]), Keep(50)], [new(15, [1]), Keep(30)]], [1, 1]);
        Assert.Equal([0, 1, 1], new BranchAndBound().Solve(program).Chosen);
    }

    [Fact]
    public void A_need_that_could_not_be_served_at_all_is_a_fault_of_whoever_asks() =>
        Assert.Throws<InvalidOperationException>(() => new BranchAndBound().Solve(new ChoiceProgram([[new(1, [0])]], [1])));
}
