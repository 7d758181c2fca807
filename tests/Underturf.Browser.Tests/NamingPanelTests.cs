using Bunit;
using Microsoft.AspNetCore.Components;
using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Browser;

/// <summary>Naming the ends of box 10 of the demo log, on a device in memory, without a browser.</summary>
public sealed class NamingPanelTests : BunitContext
{
    private readonly MemoryDevice device = new();
    private readonly NamingDesk desk = new();
    private DeviceLog log = null!;
    private int asked;

    private IReadOnlyList<Fact> Noted => [.. log.Document.Entries.Where(e => e.Id.Writer == "page-a").Select(e => e.Fact!)];

    private NamingRound Round => desk.Answer!.Next!;

    private async Task<IRenderedComponent<NamingPanel>> OpenAsync(string? plan, bool source = false)
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        log = new DeviceLog(device);
        await log.OpenDeviceAsync();
        await log.TakeInAsync("Served log", await File.ReadAllBytesAsync(Checkout.DemoLog));
        (desk.Draft.Plan, desk.Draft.Source) = (plan, source);
        Name();
        return Render<NamingPanel>(p => p
            .Add(b => b.History, log.History).Add(b => b.Card, Card).Add(b => b.Desk, desk).Add(b => b.StoreAll, StoreAsync)
            .Add(b => b.Again, () => asked++).Add(b => b.Closed, EventCallback.Empty).Add(b => b.SaveCopy, EventCallback.Empty));
    }

    private BoxCard Card => BoxCard.Of(log.History, "b10")!;

    private void Name()
    {
        var ask = desk.Turn("b10");
        desk.End(Notebook.Open(log.Document, PracticeBook.Default).Name(ask.Place, ask.ToCrew()));
    }

    private async Task<Problem?> StoreAsync(IReadOnlyList<Fact> facts)
    {
        foreach (var fact in facts)
        {
            if ((await log.NoteAsync(fact)).Problem is { } trouble)
            {
                return trouble;
            }
        }

        return null;
    }

    /// <summary>Has the round after the last note worked out, as the page does.</summary>
    private void GoOn(IRenderedComponent<NamingPanel> panel)
    {
        Name();
        panel.Render(p => p.Add(b => b.History, log.History).Add(b => b.Card, Card));
    }

    [Fact]
    public async Task A_round_of_yes_and_no_is_one_tap_an_end_and_one_note()
    {
        var panel = await OpenAsync("continuity, half of the wires at a time");
        var round = Round;
        Assert.Contains("No ohmmeter on a live wire", panel.Find(".round .caution").TextContent, StringComparison.Ordinal);
        Assert.Equal(round.On, panel.Find(".round-on").TextContent);
        Assert.True(panel.Find(".round-store").HasAttribute("disabled"));
        await panel.Find($".mark[data-end={round.Touch[0]}] .mark-yes").ClickAsync();
        await panel.Find($".mark[data-end={round.Touch[1]}] .mark-no").ClickAsync();
        Assert.Contains($"{round.Touch.Count - 2} not touched", panel.Find(".round-store").TextContent, StringComparison.Ordinal);
        await panel.Find(".round-store").ClickAsync();
        var touch = Assert.IsType<TouchFact>(Assert.Single(Noted));
        Assert.Equal(("continuity", "b10", round.Against), (touch.How, touch.Place, touch.Against));
        Assert.Equal(round.Put, touch.Put);
        Assert.Equal(round.Touch.Take(2), touch.Touched);
        Assert.Equal([round.Touch[0]], touch.Answered);
        GoOn(panel);
        Assert.Empty(panel.FindAll("[aria-pressed=true].mark-yes"));
    }

    [Fact]
    public async Task Where_the_first_answer_ends_a_round_one_tap_says_which_ends_were_touched()
    {
        var panel = await OpenAsync("test coil, one wire at a time");
        var round = Round;
        Assert.True(round.UntilOne);
        await panel.Find($".touch-one[data-end={round.Touch[1]}]").ClickAsync();
        GoOn(panel);
        await panel.Find(".touch-none").ClickAsync();
        var touches = Noted.OfType<TouchFact>().ToList();
        Assert.Equal(round.Touch.Take(2), touches[0].Touched);
        Assert.Equal([round.Touch[1]], touches[0].Answered);
        Assert.Empty(touches[1].Answered);
        Assert.NotEmpty(touches[1].Touched);
    }

    [Fact]
    public async Task The_loudest_end_is_one_tap_among_all_that_were_compared()
    {
        var panel = await OpenAsync("tone, one wire at a time");
        var round = Round;
        await panel.Find($".touch-one[data-end={round.Touch[^1]}]").ClickAsync();
        var touch = Assert.IsType<TouchFact>(Assert.Single(Noted));
        Assert.Equal(round.Touch, touch.Touched);
        Assert.Equal([round.Touch[^1]], touch.Answered);
    }

    [Fact]
    public async Task Known_resistors_are_fitted_first_then_ohms_are_read_and_at_last_all_are_off()
    {
        var panel = await OpenAsync("known resistor");
        var fit = Round.Fit;
        Assert.Empty(panel.FindAll(".pad"));
        await panel.FindAll(".fit-one")[0].ClickAsync();
        panel.Render(p => p.Add(b => b.History, log.History));
        Assert.Equal(fit.Count - 1, panel.FindAll(".fit-one").Count);
        await panel.Find(".fit-all").ClickAsync();
        Assert.Equal(fit.Select(f => (f.End, (double?)f.Ohms)), Noted.OfType<ResistorFact>().Select(r => (r.End, r.Ohms?.Ohms)));
        GoOn(panel);
        var round = Round;
        await panel.Find(".round-ohms").SubmitAsync();
        Assert.Contains("Tap what the display showed", panel.Find(".missing").TextContent, StringComparison.Ordinal);
        await panel.Find(".pad-value").InputAsync("108.6");
        await panel.Find(".round-ohms").SubmitAsync();
        var touch = Noted.OfType<TouchFact>().Single();
        Assert.Equal(("108.6 ohm", round.Put[0]), (touch.Value!.Value.Value!.Value.Text, touch.Put.Single()));
        Assert.Equal(round.Touch, touch.Touched);
        desk.Draft.Plan = "tone, one wire at a time";
        GoOn(panel);
        await panel.Find(".fitted-off").ClickAsync();
        Assert.Equal(fit.Count, Noted.OfType<ResistorFact>().Count(r => r.Ohms is null));
    }

    [Fact]
    public async Task A_name_that_is_sure_is_written_down_as_inferred_with_one_tap()
    {
        var panel = await OpenAsync("continuity, one wire at a time");
        foreach (var way in new[] { "test coil", "continuity", "continuity" })
        {
            await log.NoteAsync(new TouchFact { How = way, Place = "b10", Put = ["s25"], Against = "e10-4", Touched = ["e10-3", "e10-5"], Answered = ["e10-3"] });
        }

        GoOn(panel);
        await panel.Find(".end-naming[data-end=e10-3] .end-write").ClickAsync();
        var end = Noted.OfType<EndFact>().Single();
        Assert.Equal(("e10-3", "s25", Grade.Inferred), (end.Id, end.Station, end.Sure));
        GoOn(panel);
        Assert.Empty(panel.FindAll(".end-naming[data-end=e10-3] .end-write"));
        Assert.Equal("station 25", panel.Find(".end-naming[data-end=e10-3] .grade-inferred").TextContent);
    }

    [Fact]
    public async Task Who_is_here_and_the_plan_are_chosen_and_everything_is_asked_anew()
    {
        var panel = await OpenAsync(null);
        Assert.Equal("one person", panel.Find(".crew [aria-pressed=true]").TextContent);
        await panel.Find(".crew-remote").ClickAsync();
        Assert.Equal((1, true, 1), (desk.Draft.People!.Value, desk.Draft.Remote!.Value, asked));
        var second = desk.Plans[1].Way;
        Assert.Contains($"Next best: {second}, ", panel.Find(".plan-runner").TextContent, StringComparison.Ordinal);
        await panel.FindAll(".plan")[1].ClickAsync();
        Assert.Equal((second, 2), (desk.Draft.Plan, asked));
        GoOn(panel);
        Assert.True(desk.Plans.Count > 2);
        Assert.StartsWith(second, panel.Find(".plan[aria-pressed=true] .plan-way").TextContent, StringComparison.Ordinal);
        await panel.Find(".plan-cheapest").ClickAsync();
        Assert.Null(desk.Draft.Plan);
    }

    [Fact]
    public async Task A_note_against_all_others_is_shown_with_its_id()
    {
        var panel = await OpenAsync("continuity, one wire at a time");
        foreach (var way in new[] { "test coil", "continuity", "continuity" })
        {
            await log.NoteAsync(new TouchFact { How = way, Place = "b10", Put = ["s25"], Against = "e10-4", Touched = ["e10-3", "e10-5"], Answered = ["e10-3"] });
        }

        var odd = await log.NoteAsync(new TouchFact { How = "test coil", Place = "b10", Put = ["s12"], Against = "e10-4", Touched = ["e10-3"], Answered = ["e10-3"] });
        GoOn(panel);
        Assert.Contains($"note {odd.Value.Id}", panel.Find(".doubt").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_source_at_hand_puts_it_on_ends_here_and_notes_which_wires_answered_there()
    {
        var panel = await OpenAsync("live wire from the box, half of the ends at a time", source: true);
        Assert.Equal("true", panel.Find(".crew-source").GetAttribute("aria-pressed"));
        Assert.Contains("feeds back", panel.Find(".round .caution").TextContent, StringComparison.Ordinal);
        var wire = Round.Touch.First(log.History.Now.Stations.ContainsKey);
        await panel.Find($".mark[data-end={wire}] .mark-yes").ClickAsync();
        await panel.Find(".marks-rest").ClickAsync();
        await panel.Find(".round-store").ClickAsync();
        var touch = Assert.IsType<TouchFact>(Assert.Single(Noted));
        Assert.Equal(Round.Touch, touch.Touched);
        Assert.All(touch.Put, id => Assert.StartsWith("e10-", id, StringComparison.Ordinal));
        Assert.Equal(wire, Assert.Single(touch.Answered));
        await panel.Find(".crew-source").ClickAsync();
        Assert.Equal((false, 1), (desk.Draft.Source, asked));
    }

    [Fact]
    public async Task An_end_that_comes_from_no_controller_is_listened_for_at_the_valves_with_one_tap()
    {
        var panel = await OpenAsync("continuity, half of the wires at a time", source: true);
        var none = new TouchFact { How = "continuity", Place = "b10", Put = [.. log.History.Now.Stations.Keys], Against = "e10-4", Touched = ["e10-3", "e10-5", "e10-1"], Answered = ["e10-5", "e10-1"] };
        await log.NoteAsync(none);
        await log.NoteAsync(none with { How = "test coil" });
        GoOn(panel);
        await panel.Find(".onward[data-end=e10-3] .onward-one").ClickAsync();
        var click = Noted.OfType<TouchFact>().Last();
        Assert.Equal(("valve click", "e10-3"), (click.How, Assert.Single(click.Put)));
        Assert.Equal(click.Touched[0], Assert.Single(click.Answered));
    }

    [Fact]
    public async Task What_the_device_refuses_is_said_and_the_taps_stay()
    {
        var panel = await OpenAsync("continuity, half of the wires at a time");
        await panel.FindAll(".mark-yes")[0].ClickAsync();
        device.Full = new Problem("this device", "has no room left", "Free some");
        await panel.Find(".round-store").ClickAsync();
        Assert.Contains("has no room left", panel.Find(".not-stored").TextContent, StringComparison.Ordinal);
        Assert.Single(desk.Draft.Marks);
        Assert.Empty(Noted);
    }

    [Fact]
    public async Task What_a_spare_lacks_is_noted_here_until_it_is_proven_to_this_box()
    {
        var panel = await OpenAsync("continuity, one wire at a time");
        await log.NoteAsync(new EndFact { Id = "loose", Place = "c1", Label = "loose 1", Colour = "blue" });
        await log.NoteAsync(new EndFact { Id = "e10-4", Place = "b10", Common = true });
        foreach (var way in new[] { "continuity", "continuity", "tone", "live wire", "live wire" })
        {
            await log.NoteAsync(new TouchFact { How = way, Place = "b10", Put = ["loose"], Against = "e10-4", Touched = ["e10-3", "e10-5"], Answered = ["e10-3"] });
        }

        GoOn(panel);
        Assert.Contains("not proven", panel.Find(".spare").TextContent, StringComparison.Ordinal);
        await panel.FindAll(".spare-note").First(b => b.TextContent == "Note test coil").ClickAsync();
        await panel.Find(".spare-yes").ClickAsync();
        await panel.FindAll(".spare-note").First(b => b.TextContent == "Note insulation").ClickAsync();
        await panel.Find(".spare .key.over").ClickAsync();
        await panel.Find(".spare .round-ohms").SubmitAsync();
        var touches = Noted.OfType<TouchFact>().TakeLast(2).ToList();
        Assert.Equal(("test coil", "e10-3", "e10-4"), (touches[0].How, touches[0].Answered.Single(), touches[0].Against));
        Assert.True(touches[1] is { How: "insulation", Value.IsOverRange: true });
        GoOn(panel);
        Assert.DoesNotContain("coil", string.Concat(panel.FindAll(".spare-missing li").Select(li => li.TextContent)), StringComparison.Ordinal);
    }
}
