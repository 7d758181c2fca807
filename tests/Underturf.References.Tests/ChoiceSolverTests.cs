using CsCheck;
using Underturf.Planning.Choosing;
using Underturf.Planning.Solver;
using Underturf.Tests.FieldLog;
using Underturf.Tests.Planning;

namespace Underturf.References;

/// <summary>The managed method beside a general solver of constraints, on programs too large to try every choice.</summary>
public sealed class ChoiceSolverTests
{
    [Fact]
    public void Both_methods_find_choices_of_the_same_cost_and_bound() => Cases.Each(RandomChoices.Of(Gen.Int[6, 14], Gen.Int[3, 8]), 60, program =>
    {
        var (own, native) = (new BranchAndBound().Solve(program), new ConstraintSolver().Solve(program));
        Assert.Equal((native.Cost, native.Bound, true), (own.Cost, own.Bound, own.IsBest));
    });
}
