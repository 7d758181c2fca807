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
    public async Task Meter_and_backflow_device_are_noted_of_the_one_point_of_connection()
    {
        var sheet = Sheet(new NoteDraft { Kind = NoteKind.Supply });
        await ChooseAsync(sheet, 1, "3/4 in");
        await ChooseAsync(sheet, 2, "double check");
        sheet.Find(".backflow-at").Input("25 gpm");
        await sheet.Find("form").SubmitAsync();
        Assert.Empty(stored);
        Assert.Contains("Write both the flow and what the backflow device loses then", sheet.Find(".missing").TextContent, StringComparison.Ordinal);
        sheet.Find(".backflow-loss").Input("6 psi");
        await sheet.Find("form").SubmitAsync();
        var supply = Assert.IsType<WaterSupplyFact>(stored.Single());
        Assert.Equal(("poc", "double check"), (supply.Id, supply.BackflowKind));
        Assert.Null(supply.MeterAt);
        Assert.Equal(0.01905, supply.Meter!.Value.Metres, 1e-9);
        Assert.Equal((25, 6), (Math.Round(Units.In(supply.BackflowAt!.Value.CubicMetresPerSecond, "gpm"), 6), Math.Round(Units.In(supply.BackflowLoss!.Value.Pascals, "psi"), 6)));
        Assert.Equal(2, orchard.With(supply).Notebook().Water()!.Devices.Count);
        Assert.Equal("loses 6 psi at 25 gpm", ThingKnown.Of("poc", orchard.Notebook().History).Facts.Single(f => f.What == "backflow").Said.Split(", ")[^1]);
    }

    [Fact]
    public async Task Outlets_and_heights_that_are_noted_tell_on_the_card_of_the_valve_what_runs_out_at_the_low_end()
    {
        foreach (var (count, height) in new[] { ("2", "10 ft"), ("8", "16 ft") })
        {
            var sheet = Sheet(new NoteDraft { Kind = NoteKind.Outlets, Stations = { "s1" } });
            await ChooseAsync(sheet, 1, "spray head");
            sheet.Find(".outlet-count").Input(count);
            sheet.Find(".outlet-height").Input(height);
            await sheet.Find("form").SubmitAsync();
        }

        Assert.All(stored, fact => Assert.Equal(PartNote.NewId, Assert.IsType<OutletFact>(fact).Id));
        foreach (var (fact, number) in stored.Select((f, k) => (f, k)))
        {
            orchard.With(PartNote.Named(fact, $"writer-a/{number}"));
        }

        var facts = ThingKnown.Of("v1", orchard.Notebook().History).Facts;
        Assert.StartsWith("after it shuts 2 spray heads at the low end go on running:", facts.Single(f => f.What == "low end").Said, StringComparison.Ordinal);
        Assert.Equal("outlets with check valves at the low end, made to hold 6 ft of water", facts.Single(f => f.What == "helps").Said);
    }

    [Theory]
    [InlineData("tee", typeof(FittingFact))]
    [InlineData("i1", typeof(IsolationValveFact))]
    [InlineData("v2", typeof(ValveFact))]
    [InlineData("poc", typeof(WaterSupplyFact))]
    public async Task A_height_is_noted_of_what_it_is_of_and_nothing_else_of_it_changes(string thing, Type fact)
    {
        var sheet = Sheet(new NoteDraft { Kind = NoteKind.Height, Place = thing });
        sheet.Find(".part-height").Input("-2 ft");
        await sheet.Find("form").SubmitAsync();
        Assert.Contains("Take the lowest place as the level", sheet.Find(".missing").TextContent, StringComparison.Ordinal);
        sheet.Find(".part-height").Input("6.5");
        await sheet.Find("form").SubmitAsync();
        Assert.Empty(stored);
        sheet.Find(".part-height").Input("6.5 ft");
        await sheet.Find("form").SubmitAsync();
        Assert.Equal(fact, stored.Single().GetType());
        var (before, after) = (View, orchard.With(stored.Single()).Notebook().History.Now);
        Assert.Equal((before.Name(thing), before.PositionOf(thing)), (after.Name(thing), after.PositionOf(thing)));
    }

    [Fact]
    public void Figures_without_a_unit_or_of_another_kind_are_asked_for_again()
    {
        Assert.NotNull(new NoteDraft { Kind = NoteKind.Supply, Part = new PartNote { Thing = "poc", MeterAt = "30", MeterLoss = "12 psi" } }.ToFact().Problem);
        Assert.NotNull(new NoteDraft { Kind = NoteKind.Supply, Part = new PartNote { Thing = "poc", MeterAt = "30 psi", MeterLoss = "12 gpm" } }.ToFact().Problem);
        Assert.Equal("Choose the meter's size or the kind of backflow device, or write a flow and what is lost then", new NoteDraft { Kind = NoteKind.Supply, Part = new PartNote { Thing = "poc" } }.ToFact().Problem!.Remedy);
        Assert.Equal("Write how many they are, 1 or more", new NoteDraft { Kind = NoteKind.Outlets, Stations = { "s1" }, Part = new PartNote { What = "rotor", Count = "-3" } }.ToFact().Problem!.Remedy);
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
        return Sheet(begun.Single());
    }

    private IRenderedComponent<NoteSheet> Sheet(NoteDraft draft) => Render<NoteSheet>(p => p
            .Add(s => s.Draft, draft).Add(s => s.View, View).Add(s => s.Store, StoreAsync).Add(s => s.StoreAside, _ => Task.FromResult<Problem?>(null))
            .Add(s => s.Closed, EventCallback.Empty).Add(s => s.SaveCopy, EventCallback.Empty));

    private static Task ChooseAsync(IRenderedComponent<NoteSheet> sheet, int chooser, string label) =>
        sheet.FindAll(".chooser")[chooser].QuerySelectorAll(".choice").Single(choice => choice.TextContent == label).ClickAsync(new MouseEventArgs());

    private Task<Problem?> StoreAsync(IReadOnlyList<Fact> facts)
    {
        stored.AddRange(facts);
        return Task.FromResult<Problem?>(null);
    }
}
