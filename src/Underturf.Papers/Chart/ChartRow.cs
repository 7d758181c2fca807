using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Papers;

/// <summary>One station as the chart shows it.</summary>
/// <param name="Controller">Id of its controller.</param>
/// <param name="Places">Boxes or names of its valves; empty where none was found.</param>
/// <param name="Ohms">The last ohms read at its terminal, as read.</param>
/// <param name="State">In a few words: sound, in question or not tested; never "open", which is a fault of a circuit.</param>
internal sealed record ChartRow(
    string Controller,
    int Terminal,
    string Number,
    IReadOnlyList<string> Waters,
    Grade WatersGrade,
    IReadOnlyList<string> Places,
    Grade PlaceGrade,
    string Minutes,
    string Ohms,
    Grade? OhmsGrade,
    string State,
    bool IsOpen)
{
    public static IReadOnlyList<ChartRow> Of(PaperMatter matter)
    {
        var (view, facts) = (matter.View, matter.Facts);
        var probes = matter.Notebook.Book.Probes.Where(p => p.Measures == Measure.StationOhms).Select(p => p.Name).ToHashSet(StringComparer.Ordinal);
        var ohms = facts.Readings.Where(r => probes.Contains(r.Fact.How) && r.Fact.Stations.Count == 1).ToLookup(r => view.Identity.Of(r.Fact.Stations[0]));
        var tested = facts.Readings.SelectMany(r => r.Fact.Stations).Concat(facts.Tests.Select(t => t.Fact.Station)).Select(view.Identity.Of).ToHashSet(StringComparer.Ordinal);
        return [.. view.Stations
            .Select(s => Row(matter, s.Key, s.Value, ohms[s.Key].LastOrDefault(), tested.Contains(s.Key)))
            .OrderBy(r => r.Controller, StringComparer.Ordinal)
            .ThenBy(r => r.Terminal)
            .ThenBy(r => r.Number, StringComparer.Ordinal)];
    }

    private static ChartRow Row(PaperMatter matter, string id, StationFact station, Observed<ReadingFact>? ohms, bool tested)
    {
        var view = matter.View;
        var number = view.StationNumber(id);
        var valves = view.ValvesOf(id).ToList();
        var (state, open) = StateOf(matter, number, tested);
        return new ChartRow(
            view.Identity.Of(station.Controller),
            station.Terminal,
            number,
            station.Waters,
            station.Waters.Count == 0 ? Grade.Unknown : station.Sure,
            [.. valves.Select(v => v.Valve.Box is { } box ? view.Name(box) : v.Valve.Label ?? view.Name(v.Id)).Distinct(StringComparer.Ordinal)],
            valves.Count == 0 ? Grade.Unknown : valves.Max(v => v.Valve.Sure),
            station.Minutes is { } minutes ? minutes.ToString("0.#") : "–",
            ohms is null ? "–" : (ohms.Fact.Value.Value?.Text ?? "over range") + (ohms.Fact.Drifting ? ", drifting" : string.Empty),
            ohms?.Fact.Sure,
            state,
            open);
    }

    private static (string Text, bool Open) StateOf(PaperMatter matter, string number, bool tested)
    {
        if (matter.Answers.Questions.FirstOrDefault(q => q.Stations.Contains(number, StringComparer.Ordinal)) is not { } question)
        {
            return (tested ? "sound" : "not tested", false);
        }

        return question.Explanations is [var first, ..]
            ? ($"in question, {Say.Share(first.Probability)}: {Short(first)}", true)
            : ("in question", true);
    }

    /// <summary>One thing by its name; the volts of a run that is too weak stand in the findings.</summary>
    private static string Short(Explanation explanation) =>
        explanation.Fault.Contains('+', StringComparison.Ordinal) ? explanation.Summary : explanation.Summary.Split("; ")[0];
}
