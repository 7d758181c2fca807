using Bunit;
using Microsoft.AspNetCore.Components;
using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;
using Underturf.Tests.Reasoning.Water;

namespace Underturf.Browser;

/// <summary>Making a place dry and stopping water that runs, without a browser. The orchard is made up.</summary>
public sealed class WaterPanelTests : BunitContext
{
    private readonly Orchard orchard = Orchard.Piped();
    private readonly List<NoteDraft> begun = [];

    private readonly WaterDesk desk = new();

    public WaterPanelTests() => JSInterop.Mode = JSRuntimeMode.Loose;

    private PropertyHistory History => orchard.Notebook().History;

    [Fact]
    public async Task What_was_shut_stays_on_the_card_with_what_goes_dry_until_it_is_open_again()
    {
        var dry = Dry("v3");
        Assert.Equal(["i2"], dry.FindAll(".dry-step").Select(step => step.GetAttribute("data-shut")));
        Assert.Contains("3, 4", dry.Find(".figures").TextContent, StringComparison.Ordinal);
        Assert.Empty(dry.FindAll(".dry-proved"));
        await dry.Find(".dry-is-shut").ClickAsync(new());
        dry.Render(p => p.Add(d => d.History, History));
        Assert.Empty(dry.FindAll(".dry-step"));
        Assert.Contains("high is shut", dry.Find(".dry-stands").TextContent, StringComparison.Ordinal);
        Assert.Contains("3, 4", dry.Find(".figures").TextContent, StringComparison.Ordinal);
        await dry.Find(".dry-open").ClickAsync(new());
        dry.Render(p => p.Add(d => d.History, History));
        Assert.Equal(["i2"], dry.FindAll(".dry-step").Select(step => step.GetAttribute("data-shut")));
    }

    [Fact]
    public async Task A_proof_of_no_pressure_counts_until_a_valve_that_it_rests_on_is_turned()
    {
        var dry = Dry("v3");
        await dry.Find(".dry-is-shut").ClickAsync(new());
        dry.Render(p => p.Add(d => d.History, History));
        await dry.Find(".dry-proved").ClickAsync(new());
        dry.Render(p => p.Add(d => d.History, History));
        Assert.Contains("proved 12 April 2032", dry.Find(".step-done").TextContent, StringComparison.Ordinal);
        orchard.Turn("i2", "open").Turn("i2", "shut");
        dry.Render(p => p.Add(d => d.History, History));
        Assert.Empty(dry.FindAll(".step-done"));
    }

    [Fact]
    public async Task Where_all_has_to_be_shut_the_point_of_connection_is_left_off()
    {
        var dry = Dry("tee");
        Assert.Contains("pipe poc-tee", dry.Find(".missing").TextContent, StringComparison.Ordinal);
        await dry.Find(".dry-is-shut").ClickAsync(new());
        dry.Render(p => p.Add(d => d.History, History));
        Assert.Contains("everything at street meter", dry.Find(".dry-stands").TextContent, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Running_water_is_stopped_step_by_step_and_each_tap_is_an_entry_that_goes_on_on_any_phone()
    {
        var running = Running();
        running.FindAll(".choice").First(choice => choice.TextContent == "3").Click();
        Again(running);
        Assert.Equal(["controller", "bleed", "coil", "flow", "isolation"], running.FindAll(".running-step").Select(step => step.GetAttribute("data-step")));
        for (var taps = 0; taps < 5; taps++)
        {
            Assert.Equal("step", running.FindAll(".running-step")[taps].GetAttribute("aria-current"));
            await running.FindAll(".step-store")[0].ClickAsync(new());
            Again(running);
        }

        Assert.Contains("Does it still run?", running.Find(".missing").TextContent, StringComparison.Ordinal);
        var view = History.Now;
        Assert.Equal(["controller c left as: controller off", "station 3, water running: begun", "bleed shut", "coil snug"], [
            .. History.Facts.LeftAs.Select(l => $"{view.Name(l.Fact.Place)} left as: {l.Fact.State}"),
            .. History.Facts.Steps.Select(s => s.Fact.Step == "begun" ? $"{view.Name(s.Fact.Place)}, {s.Fact.Job}: begun" : s.Fact.Step)]);
        Assert.Equal([("v3", "shut"), ("i2", "shut")], History.Facts.Settings.Select(s => (s.Fact.Of, s.Fact.State)));
    }

    [Fact]
    public async Task It_is_over_once_it_has_stopped_and_somebody_noted_how_it_is_left_and_who_was_told()
    {
        var running = Running();
        running.Find(".running-unknown").Click();
        Again(running);
        Assert.Equal("poc", RunningWater.Of(History)!.Place);
        await running.Find(".running-stopped").ClickAsync(new());
        Again(running);
        running.FindAll(".choice").First(choice => choice.TextContent == "water off").Click();
        running.Find("input").Input("the gardener");
        await running.Find(".running-left").ClickAsync(new());
        var left = Assert.Single(History.Facts.LeftAs).Fact;
        Assert.Equal(("poc", "water off", "the gardener"), (left.Place, left.State, left.Told));
        Again(running);
        Assert.NotNull(running.Find(".running-unknown"));
    }

    [Fact]
    public void Only_where_water_comes_to_a_thing_can_it_be_made_dry()
    {
        orchard.With(new BoxFact { Id = "b1" }).With(new BoxFact { Id = "b2" }).With(new ValveFact { Id = "v9", Box = "b2" });
        Assert.Equal([true, true, true, true, true, true, false, false, false], new[] { "v3", "s3", "tee", "i1", "poc-tee", "b2", "b1", "c", "poc" }.Select(id => WaterDesk.CanBeDry(History.Now, id)));
    }

    private IRenderedComponent<DryPanel> Dry(string place) => Render<DryPanel>(p => p
        .Add(d => d.Place, place)
        .Add(d => d.History, History)
        .Add(d => d.TakesNotes, true)
        .Add(d => d.StoreAll, Keep)
        .Add(d => d.Note, EventCallback.Factory.Create<NoteDraft>(this, begun.Add)));

    private IRenderedComponent<RunningPanel> Running() => Render<RunningPanel>(p => p.Add(r => r.Desk, desk).Add(r => r.History, History).Add(r => r.StoreAll, Keep));

    private void Again(IRenderedComponent<RunningPanel> running) => running.Render(p => p.Add(r => r.History, History));

    private Task<Problem?> Keep(IReadOnlyList<Fact> facts)
    {
        _ = facts.Aggregate(orchard, (o, fact) => o.With(fact));
        return Task.FromResult<Problem?>(null);
    }
}
