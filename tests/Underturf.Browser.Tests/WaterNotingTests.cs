using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;
using Underturf.Tests.Reasoning.Water;

namespace Underturf.Browser;

/// <summary>Noting what the moves about water ask for, without a browser.</summary>
public sealed class WaterNotingTests : BunitContext
{
    private readonly Orchard orchard = Orchard.Piped().Meter("2.4 gpm").Meter("2.4 gpm");
    private readonly List<NoteDraft> begun = [];
    private readonly List<Fact> stored = [];

    public WaterNotingTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton<IPhotoShelf>(new MemoryShelf());
    }

    private PropertyView View => orchard.Notebook().History.Now;

    [Fact]
    public async Task Shutting_a_valve_and_the_meter_after_it_are_one_form_and_two_notes()
    {
        var asked = orchard.Idle().Moves.SelectMany(move => move.Steps).Select(step => step.Asks).OfType<SettingFact>().First();
        var sheet = await BeginAsync(asked, "It is shut");
        await sheet.FindAll(".key").First(key => key.TextContent == "0").ClickAsync(new MouseEventArgs());
        await sheet.Find("form").SubmitAsync();
        Assert.Equal((asked.Of, "shut"), (Assert.IsType<SettingFact>(stored[0]).Of, ((SettingFact)stored[0]).State));
        Assert.Equal(("meter flow", "0 gpm"), (Assert.IsType<ReadingFact>(stored[1]).How, ((ReadingFact)stored[1]).Value.Value?.Text));
        Assert.NotEqual(orchard.Idle().Explanations[0].Probability, orchard.With(stored[0]).With(stored[1]).Idle().Explanations[0].Probability);
    }

    [Fact]
    public async Task A_walk_is_noted_with_one_tap_and_store()
    {
        var sheet = await BeginAsync(new WatchFact { Station = "s2" }, "Nothing odd");
        await sheet.Find("form").SubmitAsync();
        var walk = Assert.IsType<WatchFact>(stored.Single());
        Assert.Equal("s2", walk.Station);
        Assert.Empty(walk.Seen);
        Assert.Null(walk.About);
    }

    [Fact]
    public async Task A_walk_with_everything_off_says_what_was_seen_and_at_which_station()
    {
        var sheet = await BeginAsync(new WatchFact(), "Note what was seen");
        await ChooseAsync(sheet, 1, "the lowest outlet weeps");
        await ChooseAsync(sheet, 2, "3");
        await sheet.Find("form").SubmitAsync();
        var walk = Assert.IsType<WatchFact>(stored.Single());
        Assert.Equal(((string?)null, "s3"), (walk.Station, walk.About));
        Assert.Equal(["weeping"], walk.Seen);
    }

    [Fact]
    public void What_another_form_left_is_neither_a_sight_nor_a_state()
    {
        Assert.Empty(Assert.IsType<WatchFact>(new NoteDraft { Kind = NoteKind.Watch, Found = ["no such sight"] }.ToFact().Value).Seen);
        Assert.Equal("Choose how it stands now", new NoteDraft { Kind = NoteKind.Setting, Target = "i1", State = "hole open" }.ToFact().Problem!.Remedy);
    }

    [Fact]
    public void The_meter_may_name_the_one_station_that_runs_or_none()
    {
        Assert.True(new NoteDraft { How = "meter flow" }.NamesStations);
        Assert.False(new NoteDraft { How = "running pressure" }.NamesStations);
        var form = Render<ReadingForm>(p => p.Add(f => f.Draft, new NoteDraft { Kind = NoteKind.Reading, How = "meter flow", Unit = "gpm" }).Add(f => f.View, View));
        Assert.Equal("Station that runs (none: everything is off)", form.Find(".chooser legend").TextContent);
    }

    [Fact]
    public void Cans_are_added_one_after_the_other_and_the_one_on_the_pad_is_not_lost()
    {
        var draft = new NoteDraft { Kind = NoteKind.Catch, Stations = ["s1"], Minutes = "10", Cans = ["4 mm", "0.5 in"], Value = "6", Unit = "mm" };
        var caught = Assert.IsType<CatchFact>(draft.ToFact().Value);
        Assert.Equal((10, "4 12.7 6"), (caught.Minutes, string.Join(' ', caught.Cans.Select(can => Math.Round(can.Metres * 1000, 6).ToString(System.Globalization.CultureInfo.InvariantCulture)))));
        Assert.Equal("Choose the station that ran", new NoteDraft { Kind = NoteKind.Catch, Cans = ["4 mm"] }.ToFact().Problem!.Remedy);
        Assert.Equal("Write how many minutes it ran, for example 10", new NoteDraft { Kind = NoteKind.Catch, Stations = ["s1"], Minutes = "ten", Cans = ["4 mm"] }.ToFact().Problem!.Remedy);
    }

    [Fact]
    public void The_question_says_what_runs_away_in_a_day()
    {
        var card = Render<QuestionCard>(p => p.Add(c => c.Question, orchard.Idle()).Add(c => c.UsUnits, true));
        Assert.Matches(@"Runs away: [\d,]+ to [\d,]+ gal a day", card.Find(".water-lost").TextContent);
    }

    /// <summary>Taps what a step can show, and opens the form that this begins.</summary>
    private async Task<IRenderedComponent<NoteSheet>> BeginAsync(Fact asked, string outcome)
    {
        var steps = Render<StepOutcomes>(p => p.Add(s => s.Asked, asked).Add(s => s.View, View).Add(s => s.Note, begun.Add));
        await steps.FindAll(".outcome").Single(button => button.TextContent == outcome).ClickAsync(new MouseEventArgs());
        return Render<NoteSheet>(p => p
            .Add(s => s.Draft, begun.Single()).Add(s => s.View, View).Add(s => s.Store, StoreAsync).Add(s => s.StoreAside, _ => Task.FromResult<Problem?>(null))
            .Add(s => s.Closed, EventCallback.Empty).Add(s => s.SaveCopy, EventCallback.Empty));
    }

    private static Task ChooseAsync(IRenderedComponent<NoteSheet> sheet, int chooser, string label) =>
        sheet.FindAll(".chooser")[chooser].QuerySelectorAll(".choice").Single(choice => choice.TextContent == label).ClickAsync(new MouseEventArgs());

    private Task<Problem?> StoreAsync(IReadOnlyList<Fact> facts)
    {
        stored.AddRange(facts);
        return Task.FromResult<Problem?>(null);
    }
}
