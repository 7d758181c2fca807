using Underturf.Property.Practice;
using Underturf.Simulation;

namespace Underturf.Tests.Simulation;

public sealed class SearchStudyTests
{
    [Fact]
    public void A_small_rerun_gives_a_row_of_the_report() =>
        Assert.Contains(SearchStudy.Row(SearchStudy.Block(61_001, 10, 12, PracticeBook.Default)), Repository.Read("docs/reports/locate.md"), StringComparison.Ordinal);

    [Fact]
    public void The_same_seed_makes_the_same_property() =>
        Assert.Equal(SearchScene.Make(7, 12, PracticeBook.Default).Log.ToBytes().ToArray(), SearchScene.Make(7, 12, PracticeBook.Default).Log.ToBytes().ToArray());
}
