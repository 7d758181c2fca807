using Underturf.Property.Practice;
using Underturf.Simulation;

namespace Underturf.Tests.Simulation;

/// <summary>A small rerun of the study of naming.</summary>
public sealed class NamingStudyTests
{
    [Fact]
    public void The_first_box_is_named_as_reported() =>
        Assert.Contains(NamingStudy.Row(NamingStudy.Block(50_001, 1, 6, PracticeBook.Default)), Repository.Read("docs/reports/identify.md"), StringComparison.Ordinal);
}
