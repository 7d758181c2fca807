using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.FieldApp;

/// <summary>A station as its list shows it.</summary>
/// <param name="Read">What the display showed at the last reading of its ohms; nothing where there is none.</param>
/// <param name="Predicted">What it should have shown with nothing broken; nothing until that is worked out.</param>
/// <param name="Question">Id of the open question about it.</param>
public sealed record StationLine(string Id, string Number, string Waters, string? Read, DateTimeOffset? At, string? Predicted, string? Question)
{
    public const string StationOhms = "station ohms";

    /// <summary>Every station in the order in which one takes them.</summary>
    public static IReadOnlyList<StationLine> All(PropertyHistory history, OpenedLog? opened)
    {
        var view = history.Now;
        var last = Last(history);
        var predicted = opened?.Predicted ?? new Dictionary<string, string>();
        return [.. Choice.InSweepOrder(view).Select(id =>
        {
            var (number, reading) = (view.StationNumber(id), last.GetValueOrDefault(id));
            return new StationLine(
                id,
                number,
                string.Join(", ", view.Stations[id].Waters),
                reading is null ? null : Shown(reading.Fact),
                reading?.At,
                reading is null ? null : predicted.GetValueOrDefault(reading.Entry.ToString()),
                opened?.Answers.Questions.FirstOrDefault(q => q.Stations.Contains(number))?.Id);
        })];
    }

    /// <summary>The last reading of each station's ohms, sought from the newest back: readings stand in the order in which they were taken.</summary>
    private static Dictionary<string, Observed<ReadingFact>> Last(PropertyHistory history)
    {
        var (readings, view, last) = (history.Facts.Readings, history.Now, new Dictionary<string, Observed<ReadingFact>>(StringComparer.Ordinal));
        for (var at = readings.Count - 1; at >= 0 && last.Count < view.Stations.Count; at--)
        {
            if (readings[at] is { Fact: { How: StationOhms, Stations: [var of] } } reading && view.Identity.Of(of) is var station && view.Stations.ContainsKey(station))
            {
                last.TryAdd(station, reading);
            }
        }

        return last;
    }

    private static string Shown(ReadingFact reading) => $"{reading.Value.Value?.Text ?? NoteDraft.OverRange}{(reading.Drifting ? ", would not settle" : "")}";
}
