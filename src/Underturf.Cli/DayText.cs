using System.Globalization;
using Underturf.Planning.Day;
using Underturf.Planning.Day.Interim;
using Underturf.Property;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Cli;

/// <summary>A day as text for a terminal: what is done first stands first.</summary>
internal static class DayText
{
    public static string Write(DayAnswer day) => string.Join(Environment.NewLine, (IEnumerable<string>)
    [
        $"ORDER OF THE DAY, {Clock(day.Begin)} from {day.At}, {Number(day.Minutes)} min",
        .. day.Rows.Count == 0 ? ["  Nothing that can be begun is worth its minutes."] : day.Rows.SelectMany(Row),
        .. day.Rows.Count > 0 ? [Sum(day)] : (string[])[],
        .. day.Load.Count > 0 ? ["", "TAKE ALONG", .. day.Load.Select(l => $"  {l}")] : (string[])[],
        .. day.Waiting.Count > 0 ? ["", "WAITS FOR", .. day.Waiting.SelectMany(Waits)] : (string[])[],
        .. day.Later.Count > 0 ? ["", "NOT TODAY", .. day.Later.Select(l => $"  {l.Where}: {l.Say}: {Number(l.Minutes)} min, saves {Number(l.Worth)} min; {l.Why}")] : (string[])[],
        .. day.Left.Count > 0 ? ["", "LEFT AS", .. day.Left.Select(Left)] : (string[])[],
        .. day.Tickets.Count > 0 ? ["", "LOCATE TICKETS", TextTable.Of(["ticket", "for", "stands", "marks seen", "nothing there"], day.Tickets.Select(t => new[] { t.Number, t.Where, t.Stands, string.Join(", ", t.Marked), string.Join(", ", t.Clear) }))] : (string[])[],
        string.Empty,
        .. Night(day.Tonight),
        string.Empty,
        $"Minutes without a spread are as the practice book has them. Engine {day.Engine}, practice book {day.Book}. Local codes and licensed practice prevail.",
    ]);

    private static IEnumerable<string> Row(DayRow row, int number) =>
    [
        string.Empty,
        $"{number + 1}. {Clock(row.Start)} {row.Where}: {row.Say}",
        $"   {Number(row.Minutes)} min{(row.WalkMinutes >= 0.05 ? $" after {Number(row.WalkMinutes)} min to get there" : string.Empty)}, done by {Clock(row.End)}{(row.SpreadMinutes > 0 ? $" ± {Number(row.SpreadMinutes)} min" : string.Empty)}{Saves(row)}",
        .. row.Steps.Count > 1 ? row.Steps.Select(s => $"   - {s.Say}") : [],
        .. row.Cautions.Select(c => $"     {c}"),
    ];

    private static string Saves(DayRow row) => row.Kind switch
    {
        RowKind.Shut => row.Stations.Count > 0 ? $"; dry from here on: station {NumberRuns.Say(row.Stations)}" : string.Empty,
        RowKind.Open => string.Empty,
        _ => $"; saves {Number(row.Worth)} min",
    };

    private static string Sum(DayAnswer day) => $"{Environment.NewLine}Saves {Number(day.Saved)} min beyond its own, a day broken off early counted in. " + (day.IsBest ? "No order saves more." : $"No order saves more than {Number(day.Bound)} min.");

    private static IEnumerable<string> Waits(WaitingJob job) =>
    [
        $"  {job.Where}: {job.Say}{(job.Following > 0 ? $", and {job.Following} after it" : string.Empty)}; would save {Number(job.Worth)} min",
        .. job.Wants.Select(w => $"    waits for {w.Say}: {w.Remedy}"),
    ];

    private static string Left(LeftPlace left) => $"  {left.Where}: {Say.Clipped(left.State)}, since {left.Since:yyyy-MM-dd HH:mm}, {(left.Told is { } told ? $"{told} was told" : "nobody was told")}; {(left.Today ? "ended today" : "carried over")}: {left.Ends}";

    private static IEnumerable<string> Night(InterimAnswer night)
    {
        yield return "TONIGHT";
        yield return Group(night, Tonight.MustNot);
        yield return Group(night, Tonight.ByHand);
        yield return Group(night, Tonight.StaysDry);
        yield return $"{Group(night, Tonight.Run)}: {Number(night.ProgrammeMinutes)} min, one after the other";
        foreach (var say in night.Overnight)
        {
            yield return $"  ! {say}";
        }

        foreach (var alike in night.Stations.Where(s => s.Why.Count > 0).GroupBy(s => $"({InterimWords.Of(s.What)}{(s.Then != s.What ? $"; {InterimWords.Of(s.Then)} after today's order" : string.Empty)}): {InterimWords.Why(s)}"))
        {
            yield return $"  station {NumberRuns.Say(alike.Select(s => s.Number))} {alike.Key}";
        }
    }

    private static string Group(InterimAnswer night, Tonight what) => night.Of(what).Select(s => s.Number).ToList() switch
    {
        [] => $"  {InterimWords.Of(what)}: none",
        var numbers => $"  {InterimWords.Of(what)}: station {NumberRuns.Say(numbers)}",
    };

    private static string Clock(DateTimeOffset at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);

    private static string Number(double minutes) => minutes.ToString("0.#", CultureInfo.InvariantCulture);
}
