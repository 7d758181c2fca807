using Bunit;
using Microsoft.AspNetCore.Components;
using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Planning.Day;
using Underturf.Quantities;
using Underturf.Tests.Reasoning.Water;

namespace Underturf.Browser;

/// <summary>The order of the day on the page: what is done first stands first, what waits is noted with one tap.</summary>
public sealed class DayPanelTests : BunitContext
{
    private static readonly DateTimeOffset Eight = new(2032, 4, 13, 8, 0, 0, TimeSpan.Zero);

    private readonly List<Fact> stored = [];
    private readonly DayDesk desk = new();
    private NoteDraft? noted;

    [Fact]
    public async Task The_first_line_has_its_caution_open_and_its_place_is_left_with_one_tap()
    {
        var panel = Panel();
        Assert.Contains("Fill and close the hole", panel.Find(".day-first .day-what").TextContent, StringComparison.Ordinal);
        Assert.Contains("the gardener was told", panel.Find(".day-first .caution").TextContent, StringComparison.Ordinal);
        await panel.Find(".day-first .day-leave").ClickAsync(new());
        Assert.Equal((NoteKind.LeftAs, "v3", "closed and tidy"), (noted!.Kind, noted.Place, noted.State));
        Assert.Equal("3", panel.Find("[data-tonight=ByHand] dd").TextContent.Split(", ")[^1]);
    }

    [Fact]
    public async Task A_ticket_that_is_waited_for_is_noted_where_it_is_missed_and_not_without_its_days()
    {
        var panel = Panel();
        await panel.Find(".ticket-number").InputAsync("A-1107");
        await panel.Find(".ticket-store").ClickAsync(new());
        Assert.Contains("from when until when", panel.Find(".ticket-form .missing").TextContent, StringComparison.Ordinal);
        Assert.Empty(stored);
        await panel.Find(".ticket-from").ChangeAsync("2032-04-12T08:00:00");
        await panel.Find(".ticket-expires").ChangeAsync("2032-04-26T08:00:00");
        await panel.Find(".ticket-marked").InputAsync("gas, power");
        await panel.Find(".ticket-store").ClickAsync(new());
        var ticket = Assert.IsType<LocateTicketFact>(Assert.Single(stored));
        Assert.Equal((Eight.AddDays(-1), Eight.AddDays(13), "gas power", "v1"), (ticket.From, ticket.Expires, string.Join(' ', ticket.Marked), ticket.Places.Single()));
    }

    private IRenderedComponent<DayPanel> Panel()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        var notebook = Orchard.Unpiped().With(new LeftAsFact { Place = "v3", State = "hole open", Told = "the gardener" })
            .Meter("20 gpm", "s3").Meter("20 gpm", "s4").Meter("20 gpm", "s2").Watch("s1", "bubbling", "wet ground", "weak").Read("outlet pressure", "12 psi", "s1").Meter("33 gpm", "s1").Notebook();
        desk.End(new PlannedDay(DayPlan.Of(notebook, new DayAsk(Eight)).Value, new MadePaper("day.pdf", "", [], "", "", "")));
        return Render<DayPanel>(p => p
            .Add(c => c.Desk, desk)
            .Add(c => c.View, notebook.History.Now)
            .Add(c => c.Ready, true)
            .Add(c => c.Note, EventCallback.Factory.Create<NoteDraft>(this, d => noted = d))
            .Add(c => c.StoreAll, facts =>
            {
                stored.AddRange(facts);
                return Task.FromResult<Problem?>(null);
            }));
    }
}
