using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Browser;

/// <summary>Devices and a server in memory: what each ends with.</summary>
public sealed class PushAndPullTests
{
    private static readonly byte[] demo = File.ReadAllBytes(Checkout.DemoLog);

    private readonly MemoryServer server = new(demo);

    [Fact]
    public async Task Two_devices_and_the_server_end_with_the_union_of_all_notes()
    {
        var (one, two) = (await DeviceAsync("page-a"), await DeviceAsync("page-b"));
        await one.Log.NoteAsync(Told("one"));
        await two.Log.NoteAsync(Told("two"));
        await one.Home.RunAsync();
        Assert.True(await two.Home.RunAsync());
        Assert.True(await one.Home.RunAsync());
        Assert.Equal(Hashes(LogDocument.Read(server.Log)), Hashes(one.Log.Document));
        Assert.Equal(Hashes(one.Log.Document), Hashes(two.Log.Document));
        Assert.Equal(LogDocument.Read(demo).Entries.Count + 2, one.Log.Document.Entries.Count);
    }

    [Fact]
    public async Task The_server_s_own_bytes_stay_and_what_is_pushed_stands_behind_them_as_it_was_sealed()
    {
        var device = await DeviceAsync("page-a");
        var entry = (await device.Log.NoteAsync(Told("one"))).Value;
        await device.Home.RunAsync(pulls: false);
        Assert.Equal([.. demo, .. entry.Line.ToArray(), (byte)'\n'], server.Log.ToArray());
    }

    [Fact]
    public async Task What_the_server_holds_counts_as_backed_up_and_what_it_does_not_have_yet_does_not()
    {
        var device = await DeviceAsync("page-a");
        await device.Log.NoteAsync(Told("one"));
        await device.Home.RunAsync(pulls: false);
        Assert.Equal((0, HomeState.HasAll), (device.Log.NotBackedUp, device.Home.State));
        server.IsAway = true;
        await device.Log.NoteAsync(Told("two"));
        Assert.False(await device.Home.RunAsync(pulls: false));
        Assert.Equal((1, HomeState.Away), (device.Log.NotBackedUp, device.Home.State));
    }

    [Fact]
    public async Task Notes_written_while_the_server_was_away_go_when_it_is_back_and_only_those()
    {
        var device = await DeviceAsync("page-a");
        server.IsAway = true;
        await device.Log.NoteAsync(Told("one"));
        await device.Home.RunAsync();
        await device.Log.NoteAsync(Told("two"));
        server.IsAway = false;
        await device.Home.RunAsync();
        Assert.Equal([2], server.Handed);
        Assert.Equal((0, HomeState.HasAll), (device.Log.NotBackedUp, device.Home.State));
    }

    [Fact]
    public async Task A_server_that_was_put_back_to_an_older_copy_is_given_what_it_lacks()
    {
        var device = await DeviceAsync("page-a");
        await device.Log.NoteAsync(Told("one"));
        await device.Home.RunAsync();
        server.Log = demo;
        await device.Home.RunAsync();
        Assert.Equal(Hashes(device.Log.Document), Hashes(LogDocument.Read(server.Log)));
    }

    [Fact]
    public async Task A_server_that_refuses_says_why_and_the_note_stays_and_is_not_backed_up()
    {
        var device = await DeviceAsync("page-a");
        server.Refuses = new Problem("garden.jsonl", "cannot be written on the server", "Check its disk");
        await device.Log.NoteAsync(Told("one"));
        await device.Home.RunAsync(pulls: false);
        Assert.Equal(HomeState.Refuses, device.Home.State);
        Assert.Equal([server.Refuses], device.Home.Refused);
        Assert.Equal(1, device.Log.NotBackedUp);
        server.Refuses = null;
        await device.Home.RunAsync(pulls: false);
        Assert.Equal((0, HomeState.HasAll), (device.Log.NotBackedUp, device.Home.State));
    }

    [Fact]
    public async Task A_server_of_another_property_or_one_that_takes_nothing_is_handed_nothing()
    {
        var device = await DeviceAsync("page-a");
        await device.Log.NoteAsync(Told("one"));
        server.TakesNotes = false;
        await device.Home.RunAsync();
        Assert.Equal(HomeState.GivesOnly, device.Home.State);
        (server.TakesNotes, server.Log) = (true, LogDocument.Read(ReadOnlyMemory<byte>.Empty).With(Pen.Seal("garden-2", "a", null, new HybridTime(1, 0), new BoxFact { Id = "b1" }).Value).ToBytes());
        await device.Home.RunAsync();
        Assert.Equal(HomeState.Apart, device.Home.State);
        Assert.Empty(server.Handed);
    }

    [Fact]
    public async Task A_server_that_no_longer_knows_the_device_is_told_apart_from_one_that_is_away()
    {
        var device = await DeviceAsync("page-a");
        (server.IsAway, server.Silence) = (true, IHomeServer.Unpaired);
        await device.Home.RunAsync();
        Assert.Equal(HomeState.Unpaired, device.Home.State);
    }

    [Fact]
    public async Task A_copied_notebook_that_went_on_elsewhere_is_a_fork_that_both_sides_keep()
    {
        var (one, two) = (await DeviceAsync("page-a"), await DeviceAsync("page-a"));
        await one.Log.NoteAsync(Told("one"));
        await two.Log.NoteAsync(Told("two"));
        await one.Home.RunAsync();
        await two.Home.RunAsync();
        await one.Home.RunAsync();
        Assert.Equal(2, one.Log.Document.Entries.Count(entry => entry.Id == new EntryId("page-a", 1)));
        Assert.Contains(one.Log.Document.Problems, problem => problem.Place == "page-a/1");
    }

    private static ToldFact Told(string words) => new() { Who = "Jory", Text = words };

    private static IEnumerable<string> Hashes(LogDocument log) => log.Entries.Select(entry => entry.Header.Hash).Order();

    private async Task<(DeviceLog Log, PushAndPull Home)> DeviceAsync(string writer)
    {
        var log = new DeviceLog(new MemoryDevice { Writer = writer });
        await log.OpenDeviceAsync();
        await log.TakeInAsync(DeviceLog.Served, demo);
        var home = new PushAndPull(log, server);
        await home.RunAsync();
        return (log, home);
    }
}
