using Underturf.FieldLog;
using Underturf.Papers;
using Underturf.Planning.Day;
using Underturf.Reasoning;
using Underturf.Tests.Reasoning.Water;

namespace Underturf.Tests.Papers;

public sealed class DaySheetTests
{
    private static readonly DateTimeOffset Eight = new(2032, 4, 13, 8, 0, 0, TimeSpan.Zero);

    private static readonly Notebook Garden = Orchard.Unpiped()
        .With(new LeftAsFact { Place = "v3", State = "hole open", Told = "the gardener" })
        .With(new LocateTicketFact { Id = "t", Number = "A-1107", Places = ["v2"], From = Eight.AddDays(-20), Expires = Eight.AddDays(-1) })
        .Meter("20 gpm", "s3").Meter("20 gpm", "s4").Meter("20 gpm", "s2").Watch("s1", "bubbling", "wet ground", "weak").Read("outlet pressure", "12 psi", "s1").Meter("33 gpm", "s1")
        .Notebook();

    private static readonly Lazy<Answers> Believed = new(() => Garden.Answer());

    [Fact]
    public void It_has_the_jobs_in_order_what_waits_how_places_stand_the_tickets_and_the_night()
    {
        var (sheet, again) = (Sheet(), Sheet());
        Assert.Equal(sheet, again);
        var text = PdfText.All(sheet);
        Assert.All(
        ["Order of the day", "13 April 2032", "Today", "Close: fill and close the hole", "Waits", "A locate ticket for this place", "Places that stand open", "The gardener", "Locate tickets", "A-1107", "Expired 2032-04-12", "In the evening", "Tonight", "By hand only", "Programme for the time being", "Local codes and licensed practice prevail"],
        part => Assert.Contains(part, text, StringComparison.Ordinal));
    }

    private static byte[] Sheet() => DaySheet.Make(Garden, DayPlan.Of(Garden, new DayAsk(Eight), Believed.Value).Value, Believed.Value).Bytes.ToArray();
}
