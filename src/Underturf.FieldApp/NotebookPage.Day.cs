using Underturf.Planning.Day;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>The order of the day: worked out once the newest notes are, from now on; each note has it worked out anew.</summary>
public sealed partial class NotebookPage
{
    private const long MinuteMilliseconds = 60_000;

    private readonly DayDesk day = new();

    private bool IsOrdering => place == Place.Now && day.Draft.IsOpen && log.TakesNotes;

    private void OpenDay() => day.Draft.IsOpen = true;

    private Task PlanDayAsync()
    {
        var mine = thinking.Token;
        var begin = DateTimeOffset.FromUnixTimeMilliseconds(Device.WallMilliseconds / MinuteMilliseconds * MinuteMilliseconds).ToLocalTime();
        return WorkOutAsync(day, () => Notebook.PlanDayAsync(inHand.Bytes, new DayAsk(begin, day.Draft.At, day.Draft.Minutes), new Waiting(null, mine)), mine);
    }
}
