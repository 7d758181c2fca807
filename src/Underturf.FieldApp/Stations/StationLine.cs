using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.FieldApp;

/// <summary>A station as its list shows it.</summary>
/// <param name="Read">What the display showed at the last reading of its ohms; nothing where there is none.</param>
/// <param name="Predicted">What it should have shown with nothing broken; nothing until that is worked out.</param>
/// <param name="IsOlder">True where that of the last reading is not worked out yet: it is of the one before.</param>
/// <param name="Question">Id of the open question about it.</param>
public sealed record StationLine(string Id, string Number, string Waters, string? Read, DateTimeOffset? At, string? Predicted, bool IsOlder, string? Question)
{
    public const string StationOhms = "station ohms";

    /// <summary>Every station in the order in which one takes them.</summary>
    public static IReadOnlyList<StationLine> All(PropertyHistory history, OpenedLog? opened)
    {
        var view = history.Now;
        var predicted = opened?.Predicted ?? new Dictionary<string, string>();
        var last = Last(history, _ => true);
        var told = predicted.Count == 0 ? [] : Last(history, reading => predicted.ContainsKey(reading.Entry.ToString()));
        return [.. Choice.InSweepOrder(view).Select(id =>
        {
            var (number, reading, known) = (view.StationNumber(id), last.GetValueOrDefault(id), told.GetValueOrDefault(id));
            return new StationLine(
                id,
                number,
                string.Join(", ", view.Stations[id].Waters),
                reading is null ? null : Shown(reading.Fact),
                reading?.At,
                known is null ? null : predicted[known.Entry.ToString()],
                known is not null && known.Entry != reading!.Entry,
                opened?.Answers.Questions.FirstOrDefault(q => q.Stations.Contains(number))?.Id);
        })];
    }

    /// <summary>The last reading of each station's ohms that counts, sought from the newest back: readings stand in the order in which they were taken.</summary>
    private static Dictionary<string, Observed<ReadingFact>> Last(PropertyHistory history, Func<Observed<ReadingFact>, bool> counts)
    {
        var (readings, view, last) = (history.Facts.Readings, history.Now, new Dictionary<string, Observed<ReadingFact>>(StringComparer.Ordinal));
        for (var at = readings.Count - 1; at >= 0 && last.Count < view.Stations.Count; at--)
        {
            if (readings[at] is { Fact: { How: StationOhms, Stations: [var of] } } reading && view.Identity.Of(of) is var station && view.Stations.ContainsKey(station) && counts(reading))
            {
                last.TryAdd(station, reading);
            }
        }

        return last;
    }

    private static string Shown(ReadingFact reading) => $"{reading.Value.Value?.Text ?? NoteDraft.OverRange}{(reading.Drifting ? ", would not settle" : "")}";
}
