using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>The papers of a property.</summary>
public static class PaperSet
{
    public static IReadOnlyList<Paper> Make(Notebook notebook) => [];
}
