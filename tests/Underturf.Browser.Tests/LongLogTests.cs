using Underturf.FieldApp;
using Underturf.FieldLog;

namespace Underturf.Browser;

/// <summary>A long log on a device in memory: one notes in it before all of it is read.</summary>
public sealed class LongLogTests
{
    private const int Readings = 1_500;

    private readonly MemoryDevice device = new();

    [Fact]
    public async Task A_note_can_be_stored_before_all_is_read_and_follows_the_last_one_of_its_writer()
    {
        var (before, log) = await OpenAsync();
        Assert.False(log.IsWhole);
        Assert.True(log.TakesNotes);
        Assert.Equal(before.History.Now.Stations.Keys, log.History.Now.Stations.Keys);
        var entry = (await log.NoteAsync(Ohms(1))).Value;
        Assert.Equal(before.Document.LastHeader(entry.Id.Writer)!.Hash, entry.Header.Previous);
        await log.ReadWholeAsync();
        Assert.True(log.IsWhole);
        Assert.Equal([.. before.Document.ToBytes().ToArray(), .. entry.Line.ToArray(), (byte)'\n'], log.Document.ToBytes().ToArray());
        Assert.Equal(before.Document.Problems, log.Document.Problems);
    }

    [Fact]
    public async Task What_another_page_stores_while_it_is_read_is_in_it_afterwards()
    {
        var (before, log) = await OpenAsync();
        await before.NoteAsync(Ohms(2));
        var own = (await log.NoteAsync(Ohms(3))).Value;
        await log.ReadWholeAsync();
        Assert.Equal(before.Document.Entries[^1].Header.Hash, own.Header.Previous);
        Assert.Equal(own.Id, log.Document.Entries[^1].Id);
        Assert.Equal(before.Document.Entries.Count + 1, log.Document.Entries.Count);
        Assert.Equal(before.Document.Problems, log.Document.Problems);
    }

    [Fact]
    public async Task A_copy_holds_all_of_it_however_soon_it_is_asked_for()
    {
        var (before, log) = await OpenAsync();
        Assert.Null(await log.HandOutAsync());
        Assert.Equal(before.Document.ToBytes().ToArray(), device.HandedOut[^1].Bytes);
    }

    [Fact]
    public async Task The_server_gets_what_it_lacks_and_no_line_twice()
    {
        var (before, log) = await OpenAsync();
        var server = new MemoryServer(before.Document.ToBytes().ToArray());
        var own = (await log.NoteAsync(Ohms(4))).Value;
        await new PushAndPull(log, server).RunAsync();
        Assert.Equal([1], server.Handed);
        Assert.Equal([.. before.Document.ToBytes().ToArray(), .. own.Line.ToArray(), (byte)'\n'], server.Log.ToArray());
    }

    [Fact]
    public async Task Another_log_that_is_opened_meanwhile_is_not_taken_for_it()
    {
        var (_, log) = await OpenAsync();
        var reading = log.ReadWholeAsync();
        await log.TakeInAsync("orchard.jsonl", KeptLogsTests.Other());
        await reading;
        Assert.Equal("Orchard", log.Name);
        Assert.True(log.IsWhole);
    }

    /// <summary>The page that noted all of it, and one that opens it.</summary>
    private async Task<(DeviceLog Before, DeviceLog Log)> OpenAsync()
    {
        var before = new DeviceLog(device);
        await before.OpenDeviceAsync();
        await before.TakeInAsync(DeviceLog.Served, await File.ReadAllBytesAsync(Checkout.DemoLog));
        for (var i = 0; i < Readings; i++)
        {
            await before.NoteAsync(Ohms(i));
        }

        var log = new DeviceLog(device);
        await log.OpenDeviceAsync();
        return (before, log);
    }

    private static ReadingFact Ohms(int i) => new() { How = "station ohms", Stations = ["s1"], Value = Shown.Parse($"{20 + (i % 9)} ohm").Value };
}
