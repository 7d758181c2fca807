using Bunit;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Underturf.FieldApp;
using Underturf.Planning.Repair;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Tests.Planning;

namespace Underturf.Browser;

/// <summary>Repairing a valve on the page: one step at a time, one tap a step.</summary>
public sealed class RepairPanelTests : BunitContext
{
    private readonly RepairGround ground = new(RepairGround.Tree(44, 26));

    [Fact]
    public async Task A_valve_is_repaired_from_its_box_one_tap_a_step_and_what_is_seen_turns_the_plan()
    {
        var page = await OpenAsync("Boxes");
        await page.Find(".box-line").ClickAsync(new MouseEventArgs());
        await page.Find(".box-valves .repair-begin").ClickAsync(new MouseEventArgs());
        Assert.Contains("Open it, clean it", page.Find(".rework-said").TextContent, StringComparison.Ordinal);
        Assert.Contains("Roots of oak", page.Find(".repair-before").TextContent, StringComparison.Ordinal);
        Assert.Contains("(2)", page.Find(".repair-parts summary").TextContent, StringComparison.Ordinal);
        while (page.FindAll(".repair-sights").Count == 0)
        {
            await page.Find(".rework-passed").ClickAsync(new MouseEventArgs());
        }

        await page.FindAll(".repair-sights button").Single(b => b.TextContent == "Cracked body").ClickAsync(new MouseEventArgs());
        await page.Find(".rework-passed").ClickAsync(new MouseEventArgs());
        Assert.Contains("et a new valve", page.Find(".rework-said").TextContent, StringComparison.Ordinal);
        Assert.Contains("seen", page.Find(".repair-causes").TextContent, StringComparison.Ordinal);
        await page.Find(".stored button").ClickAsync(new MouseEventArgs());
        Assert.NotEmpty(page.FindAll(".repair-sights"));
    }

    [Fact]
    public async Task A_bare_valve_is_repaired_from_its_station_and_the_way_back_leads_there()
    {
        var page = await OpenAsync("Stations");
        await page.Find("[data-station=s1] .repair-begin").ClickAsync(new MouseEventArgs());
        Assert.Contains("Repair valve bare", page.Find("h1").TextContent, StringComparison.Ordinal);
        Assert.NotEmpty(page.FindAll(".repair .prevail"));
        await page.Find(".rework-close").ClickAsync(new MouseEventArgs());
        Assert.NotEmpty(page.FindAll("[data-station=s1] .repair-begin"));
    }

    private async Task<IRenderedComponent<NotebookPage>> OpenAsync(string place)
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton<INotebook>(new RepairingNotebook());
        Services.AddSingleton<ILateRooms>(new WholePage());
        Services.AddSingleton<IHomeServer>(new MemoryServer(ground.Log.ToBytes().ToArray()));
        Services.AddSingleton<IDevice>(new MemoryDevice());
        Services.AddSingleton<IPhotoShelf>(new MemoryShelf());
        Services.AddSingleton<IBackdropShelf>(new MemoryBackdrops());
        Services.AddSingleton<IWhereabouts>(new FixedWhereabouts());
        var page = Render<NotebookPage>();
        page.WaitForElement("[data-state=ready]");
        await page.FindAll(".place-name").Single(name => name.TextContent == place).ClickAsync(new MouseEventArgs());
        return page;
    }

    /// <summary>Plans truly, with what a question says that is always the same.</summary>
    private sealed class RepairingNotebook : SilentNotebook
    {
        public override Task<Outcome<Planned<RepairAnswer>>> PlanRepairAsync(ReadOnlyMemory<byte> log, string thing, Waiting waiting) =>
            Task.FromResult(Planned.Of(RepairPlan.Of(Notebook.Open(log, PracticeBook.Default), thing, RepairGround.Sure("valve-not-closing", "2"))));
    }
}
