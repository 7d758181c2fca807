using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation.Trials;

/// <summary>What a technician chooses on: the notebook's answers, the wires as noted, and where he stands.</summary>
/// <param name="Answers">With every candidate of every question listed.</param>
/// <param name="WalkMinutes">To a place, by its id.</param>
internal sealed record TrialScene(
    Answers Answers,
    PropertyView View,
    IReadOnlyDictionary<string, StationPath> Paths,
    PracticeBook Book,
    Func<string, double> WalkMinutes);
