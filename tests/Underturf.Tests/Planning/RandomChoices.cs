using CsCheck;
using Underturf.Planning.Choosing;

namespace Underturf.Tests.Planning;

/// <summary>Invented programs, small enough to try every choice.</summary>
internal static class RandomChoices
{
    public static Gen<ChoiceProgram> Small { get; } = Of(Gen.Int[1, 5], Gen.Int[1, 4]);

    public static Gen<ChoiceProgram> Of(Gen<int> needs, Gen<int> things) => things.SelectMany(count =>
        Gen.Int[0, 2].Array[count].Select(Need(count).Array[needs], (stock, options) => new ChoiceProgram(options, stock)));

    /// <summary>The least cost by trying everything.</summary>
    public static long Least(ChoiceProgram program)
    {
        var (chosen, least) = (new int[program.Needs.Count], long.MaxValue);
        do
        {
            least = Math.Min(least, program.CostOf(chosen) ?? long.MaxValue);
        }
        while (Next(chosen, program));

        return least;
    }

    private static Gen<IReadOnlyList<ChoiceOption>> Need(int things) => Gen.Int[0, 500].Select(
        Gen.Int[0, 300].Select(Gen.Int[0, things - 1].Array[1, 2], (cost, uses) => new ChoiceOption(cost, uses)).Array[0, 4],
        (keep, options) => (IReadOnlyList<ChoiceOption>)[.. options, new ChoiceOption(keep, [])]);

    private static bool Next(int[] chosen, ChoiceProgram program)
    {
        for (var i = 0; i < chosen.Length; i++)
        {
            if (++chosen[i] < program.Needs[i].Count)
            {
                return true;
            }

            chosen[i] = 0;
        }

        return false;
    }
}
