using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.Browser;

/// <summary>The place Boxes on the demo log, kept on a device in memory, without a browser.</summary>
public sealed class BoxesPlaceTests : BunitContext
{
    private static readonly byte[] demo = File.ReadAllBytes(Checkout.DemoLog);

    private readonly MemoryDevice device = new();
    private readonly BoxDesk desk = new();
    private readonly List<NoteDraft> asked = [];
    private DeviceLog log = null!;

    private IReadOnlyList<Fact> Noted => [.. log.Document.Entries.Where(e => e.Id.Writer == "page-a").Select(e => e.Fact!)];

    private async Task<IRenderedComponent<BoxesPlace>> OpenAsync(string? box = null)
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton<IPhotoShelf>(new MemoryShelf());
        log = new DeviceLog(device);
        await log.OpenDeviceAsync();
        await log.TakeInAsync("Served log", demo);
        var place = Render<BoxesPlace>(p => p
            .Add(b => b.History, log.History).Add(b => b.Desk, desk).Add(b => b.TakesNotes, true).Add(b => b.Store, StoreAsync).Add(b => b.StoreAll, async facts => await StoreAsync(_ => facts.Single()))
            .Add(b => b.SaveCopy, EventCallback.Empty).Add(b => b.Note, asked.Add));
        if (box is not null)
        {
            await place.Find($".box-line[data-box={box}]").ClickAsync();
        }

        return place;
    }

    private async Task<Problem?> StoreAsync(Func<string, Fact> write) => (await log.NoteAsync(write)).Problem;

    private void Show(IRenderedComponent<BoxesPlace> place) => place.Render(p => p.Add(b => b.History, log.History));

    private static Task PressAsync(IRenderedComponent<BoxesPlace> place, string within, string words) =>
        place.FindAll($"{within} button").First(b => b.TextContent.Trim() == words).ClickAsync();

    [Fact]
    public async Task Every_box_is_listed_once_in_the_order_people_count_with_what_is_known_of_it()
    {
        var lines = (await OpenAsync()).FindAll(".box-line");
        Assert.Equal(log.History.Now.Boxes.Count, lines.Count);
        Assert.Equal(["box 1", "box 2", "box 3"], lines.Take(3).Select(l => l.QuerySelector(".box-line-name")!.TextContent));
        Assert.Contains("6 conductor ends, 1 splice", lines.Single(l => l.GetAttribute("data-box") == "b10").TextContent, StringComparison.Ordinal);
        Assert.Contains("left as: hole open", lines.Single(l => l.GetAttribute("data-box") == "b8").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_conductor_on_the_card_is_drawn_in_its_colour_and_said_in_words()
    {
        var end = (await OpenAsync("b10")).Find(".end[data-end='e10-3']");
        Assert.Contains("--insulation-blue", end.QuerySelector(".wire")!.GetAttribute("style"), StringComparison.Ordinal);
        Assert.Contains("blue, 18 AWG", end.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_conductor_end_is_noted_in_three_taps_and_the_next_one_in_two()
    {
        var place = await OpenAsync("b10");
        await place.Find(".end-begin").ClickAsync();
        await PressAsync(place, ".colours", "yellow");
        await PressAsync(place, ".gauges", "16 AWG");
        await place.FindAll(".mate")[0].ClickAsync();
        Show(place);
        await PressAsync(place, ".colours", "black");
        await place.Find(".mate-none").ClickAsync();
        var ends = Noted.OfType<EndFact>().ToList();
        Assert.Equal(("yellow", "16 AWG", "b10"), (ends[0].Colour, ends[0].Gauge!.Value.ToString(), ends[0].Place));
        Assert.Equal(["e10-1", "e10-2"], ends[0].Mates);
        Assert.Equal(("black", "16 AWG", 0), (ends[1].Colour, ends[1].Gauge!.Value.ToString(), ends[1].Mates.Count));
        Assert.Equal(["end-page-a-1", "end-page-a-2"], ends.Select(e => e.Id));
        Assert.Equal(2, ends.Select(e => e.Label).Distinct().Count());
    }

    [Fact]
    public async Task Bad_input_is_answered_with_what_to_do_and_keeps_what_was_typed()
    {
        var place = await OpenAsync("b10");
        await place.Find(".end-begin").ClickAsync();
        await place.Find(".mate-none").ClickAsync();
        Assert.Contains("Choose the colour", place.Find(".missing").TextContent, StringComparison.Ordinal);
        await place.Find(".end-colour").InputAsync("white with a red stripe");
        await place.Find(".end-gauge").InputAsync("thick");
        await place.Find(".mate-none").ClickAsync();
        Assert.Contains("18 AWG", place.Find(".missing").TextContent, StringComparison.Ordinal);
        Assert.Equal(("white with a red stripe", "thick"), (desk.End.Colour, desk.End.Gauge));
        Assert.Empty(Noted);
    }

    [Fact]
    public async Task What_the_device_refuses_is_said_and_the_end_stays_as_it_was_typed()
    {
        var place = await OpenAsync("b10");
        device.Full = new Problem("this device", "has no room left", "Free some");
        await place.Find(".end-begin").ClickAsync();
        await PressAsync(place, ".colours", "red");
        await PressAsync(place, ".gauges", EndDraft.NoGauge);
        await place.Find(".mate-none").ClickAsync();
        Assert.Contains("has no room left", place.Find(".not-stored").TextContent, StringComparison.Ordinal);
        Assert.Equal("red", desk.End.Colour);
    }

    [Fact]
    public async Task A_correction_speaks_of_the_same_end_and_keeps_what_it_does_not_say()
    {
        var place = await OpenAsync("b10");
        await place.Find(".end[data-end='e10-1'] .end-correct").ClickAsync();
        await PressAsync(place, ".colours", "orange");
        await place.Find(".mate-none").ClickAsync();
        Assert.Equal(("orange", "end 1"), (log.History.Now.Ends["e10-1"].Colour, log.History.Now.Ends["e10-1"].Label));
        Assert.Equal(2, BoxCard.Of(log.History, "b10")!.Joints[0].Ends.Count);
    }

    [Fact]
    public async Task A_rebuild_notes_each_step_goes_on_where_it_was_and_asks_how_the_box_is_left()
    {
        var place = await OpenAsync("b10");
        await place.Find(".rebuild-begin").ClickAsync();
        foreach (var step in new[] { "cleared", "photographed", "tagged" })
        {
            Assert.Equal(step, place.Find("[aria-current=step]").GetAttribute("data-step"));
            await place.Find(".step-store").ClickAsync();
            Show(place);
        }

        await place.FindAll(".one-free")[0].ClickAsync();
        await place.Find(".rebuild-leave").ClickAsync();
        Assert.Equal((NoteKind.LeftAs, "b10"), (asked.Single().Kind!.Value, asked.Single().Place));
        Show(place);
        Assert.Equal("Go on rebuilding", place.Find(".rebuild-begin").TextContent);
        await place.Find(".rebuild-begin").ClickAsync();
        Assert.Equal("freed", place.Find("[aria-current=step]").GetAttribute("data-step"));
        Assert.Equal(["cleared", "photographed", "tagged", "freed"], Noted.OfType<StepFact>().Select(s => s.Step));
    }

    [Fact]
    public async Task The_step_that_photographs_takes_photos_which_then_stand_on_the_card()
    {
        var place = await OpenAsync("b10");
        await place.Find(".rebuild-begin").ClickAsync();
        await place.Find("[data-step=photographed] .step-turn").ClickAsync();
        await place.Find(".photo-take input").ChangeAsync(new ChangeEventArgs());
        Assert.Equal("b10", Noted.OfType<PhotoFact>().Single().Place);
        desk.TurnTo(BoxTask.Look);
        Show(place);
        Assert.Equal(MemoryShelf.Hash, place.Find(".box-card .photo").GetAttribute("data-photo"));
    }

    [Fact]
    public async Task A_joint_that_is_remade_is_noted_as_the_repair_of_the_practice_book()
    {
        var place = await OpenAsync("b10");
        await place.Find(".rebuild-begin").ClickAsync();
        await place.Find("[data-step=remade] .step-turn").ClickAsync();
        Assert.Contains("Never reuse a connector", place.Find(".caution").TextContent, StringComparison.Ordinal);
        await place.Find(".one-remade").ClickAsync();
        Assert.Equal(("splice remade", "b10"), (Noted.OfType<WorkFact>().Single().Did, Noted.OfType<WorkFact>().Single().Place));
    }

    [Theory]
    [InlineData("red", "red", null)]
    [InlineData("White with a red stripe", "white", "red")]
    [InlineData("gray/violet", "grey", "purple")]
    [InlineData("bare copper", null, null)]
    [InlineData(null, null, null)]
    public void Insulation_is_drawn_by_the_colours_that_its_words_name(string? words, string? body, string? stripe)
    {
        var drawn = Insulation.Of(words);
        Assert.Equal((body, stripe), (drawn?.Body, drawn?.Stripe));
    }
}
