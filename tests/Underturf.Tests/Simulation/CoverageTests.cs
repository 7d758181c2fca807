using Underturf.Property.Practice;
using Underturf.Simulation;

namespace Underturf.Tests.Simulation;

/// <summary>The reporting seeds are for reporting only; nothing is tuned on them.</summary>
public sealed class CoverageTests(ITestOutputHelper output)
{
    private static readonly Lazy<IReadOnlyList<CoverageStudy.PropertyResult>> Measured = new(Measure);

    /// <summary>The first block of the report, measured once for all tests.</summary>
    public static IReadOnlyList<CoverageStudy.PropertyResult> FirstBlock => Measured.Value;

    [Fact]
    public void The_true_class_is_given_in_at_least_95_of_100_properties()
    {
        var missed = FirstBlock.Where(r => r.Missed.Count > 0).Select(r => $"seed {r.Seed}: {string.Join(", ", r.Missed)}").ToList();
        output.WriteLine(CoverageStudy.Row(FirstBlock));
        output.WriteLine(string.Join('\n', missed));
        Assert.True(missed.Count <= CoverageStudy.BlockSize * 0.05, $"{missed.Count} of {CoverageStudy.BlockSize}:\n{string.Join('\n', missed)}");
    }

    private static CoverageStudy.PropertyResult[] Measure()
    {
        var results = new CoverageStudy.PropertyResult[CoverageStudy.BlockSize];
        Parallel.For(0, results.Length, i => results[i] = CoverageStudy.One(CoverageStudy.FirstSeed + (ulong)i, PracticeBook.Default));
        return results;
    }
}
