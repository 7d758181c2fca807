using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Telling;

/// <summary>How a planned search is said, on the terminal, on paper and on the page.</summary>
public static class SearchWords
{
    /// <summary>Where to stop, and why.</summary>
    public const string Stop = "Then stop: more costs more than it is worth.";

    /// <summary>What it says where no search pays. For several things at once, tracing and listening were not weighed.</summary>
    public static string NoSearch(LocationAnswer location) => location.Things.Count == 1
        ? "No search pays: it costs more than it is expected to bring."
        : "No search for all of them pays. Name one thing to see whether to trace, listen or ask first.";

    /// <summary>"31 % to find it".</summary>
    public static string Found(LocationAnswer location, SearchRoute route) => $"{Say.Share(route.Found)} to find {(location.Things.Count == 1 ? "it" : "one that is looked for")}";
}
