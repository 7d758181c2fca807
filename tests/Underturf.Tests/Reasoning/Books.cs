using Underturf.Property.Practice;

namespace Underturf.Tests.Reasoning;

/// <summary>Practice books that differ from the default.</summary>
internal static class Books
{
    /// <summary>Every sound coil and run is as it was noted, so that a figure that is off is a fault or a slip.</summary>
    public static PracticeBook AsNoted { get; } = PracticeBook.Default with { Faults = [.. PracticeBook.Default.Faults.Where(f => !f.AsksNothing)] };
}
