using System.Text;
using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Browser;

/// <summary>The log that a device keeps, on a device in memory.</summary>
public sealed class DeviceLogTests
{
    private static readonly byte[] demo = File.ReadAllBytes(Checkout.DemoLog);

    private readonly MemoryDevice device = new();

    [Fact]
    public async Task What_is_noted_is_the_line_that_the_command_line_would_seal_from_the_same_note()
    {
        var log = await OpenAsync();
        var entry = (await log.NoteAsync(Ohms("s9", "18.4 ohm"))).Value;
        var before = LogDocument.Read(demo);
        var draft = Drafts.Read("{\"kind\":\"reading\",\"version\":1,\"how\":\"station ohms\",\"stations\":[\"s9\"],\"value\":\"18.4 ohm\"}"u8.ToArray()).Notes.Single();
        var byHand = Pen.Seal(before.Property!, entry.Id.Writer, before.LastHeader(entry.Id.Writer), entry.Header.Noted, draft.Body);
        Assert.Equal(Text(byHand.Value.Line), Text(entry.Line));
        Assert.Equal([.. demo, .. entry.Line.ToArray(), (byte)'\n'], log.Document.ToBytes().ToArray());
    }

    [Fact]
    public async Task What_was_noted_is_there_when_the_device_is_opened_again()
    {
        var log = await OpenAsync();
        await log.NoteAsync(Ohms("s9", "18.4 ohm"));
        var again = new DeviceLog(device);
        await again.OpenDeviceAsync();
        Assert.Equal(log.Document.ToBytes().ToArray(), again.Document.ToBytes().ToArray());
        Assert.Equal(1, again.NotBackedUp);
    }

    [Fact]
    public async Task What_was_so_before_keeps_its_time_and_what_lies_ahead_is_refused()
    {
        var (log, now) = (await OpenAsync(), DateTimeOffset.FromUnixTimeMilliseconds((long)device.WallMilliseconds));
        var yesterday = await log.NoteAsync(Ohms("s9", "18.4 ohm"), now.AddDays(-1));
        Assert.Equal(now.AddDays(-1).ToUnixTimeSeconds(), yesterday.Value.At.ToUnixTimeSeconds());
        Assert.Equal("Choose a moment that has been, or leave it empty for now", (await log.NoteAsync(Ohms("s9", "18.4 ohm"), now.AddHours(1))).Problem!.Remedy);
    }

    [Fact]
    public void A_note_says_how_it_is_known_and_when_it_was_so()
    {
        var draft = new NoteDraft { Kind = NoteKind.Look, Place = "b1", When = "2031-05-06T14:30", Sure = Grade.Told };
        Assert.Equal((Grade.Told, new DateTime(2031, 5, 6, 14, 30, 0)), (draft.ToFact().Value.Sure, draft.At!.Value.LocalDateTime));
        Assert.Equal((Grade.Measured, null), (new NoteDraft { Kind = NoteKind.Look, Place = "b1" }.ToFact().Value.Sure, new NoteDraft().At));
        Assert.Equal("Write when it was so, or leave it empty for now", new NoteDraft { Kind = NoteKind.Look, Place = "b1", When = "noon" }.ToFact().Problem!.Remedy);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Two_pages_that_note_at_once_write_one_chain_with_or_without_a_lock(bool locks)
    {
        device.HasLock = locks;
        var (one, two) = (await OpenAsync(), await OpenAsync());
        if (!locks)
        {
            // The second page stores after the first has read and before it stores.
            device.Meanwhile = async () => Assert.True((await two.NoteAsync(Ohms("s1", "31 ohm"))).Succeeded);
        }

        var first = await one.NoteAsync(Ohms("s2", "32 ohm"));
        Assert.True(locks ? (await two.NoteAsync(Ohms("s1", "31 ohm"))).Succeeded : first.Value.Id.Seq == 2);
        await one.RefreshAsync();
        Assert.Equal([1, 2], one.Document.Entries.Where(e => e.Id.Writer == first.Value.Id.Writer).Select(e => e.Id.Seq).Order());
        Assert.Equal(LogDocument.Read(demo).Problems, one.Document.Problems);
    }

    [Fact]
    public async Task What_the_device_refuses_is_not_shown_as_noted_and_can_be_stored_later()
    {
        var log = await OpenAsync();
        device.Full = new Problem("this device", "has no room left", "Free some");
        Assert.Equal(device.Full, (await log.NoteAsync(Ohms("s9", "18.4 ohm"))).Problem);
        Assert.Equal(demo, log.Document.ToBytes().ToArray());
        device.Full = null;
        Assert.Equal(1, (await log.NoteAsync(Ohms("s9", "18.4 ohm"))).Value.Id.Seq);
    }

    [Fact]
    public async Task What_one_tap_says_is_stored_whole_with_the_desk_or_not_at_all()
    {
        var log = await OpenAsync();
        device.Full = new Problem("this device", "has no room left", "Free some");
        Assert.False((await log.NoteAllAsync([_ => Ohms("s1", "31 ohm"), _ => Ohms("s2", "32 ohm")], desk: "after")).Succeeded);
        Assert.Equal((0L, null), (log.NotBackedUp, device.Desk));
        device.Full = null;
        var stored = (await log.NoteAllAsync([_ => Ohms("s1", "31 ohm"), _ => Ohms("s2", "32 ohm")], desk: "after")).Value;
        Assert.Equal([1L, 2L], stored.Select(entry => entry.Id.Seq));
        Assert.Equal("after", device.Desk);
        var again = new DeviceLog(device);
        await again.OpenDeviceAsync();
        Assert.Equal(log.Document.ToBytes().ToArray(), again.Document.ToBytes().ToArray());
        Assert.Equal(LogDocument.Read(demo).Problems, again.Document.Problems);
    }

    [Fact]
    public async Task A_log_that_cannot_be_stored_is_shown_but_takes_no_notes()
    {
        device.Full = new Problem("this device", "has no room left", "Free some");
        var log = await OpenAsync();
        Assert.Equal(demo, log.Document.ToBytes().ToArray());
        Assert.False(log.TakesNotes);
        Assert.Equal(device.Full, (await log.NoteAsync(Ohms("s9", "18.4 ohm"))).Problem);
    }

    [Fact]
    public async Task A_log_taken_in_is_united_with_the_one_that_is_kept_as_merging_does()
    {
        var log = await OpenAsync();
        await log.NoteAsync(Ohms("s9", "18.4 ohm"));
        var elsewhere = LogDocument.Read(demo).With(Pen.Seal("memorial-garden", "jory-2", null, new HybridTime(1_932_600_000_000, 0), Ohms("s3", "33 ohm")).Value);
        var merged = LogMerge.Union(log.Document, elsewhere).ToBytes().ToArray();
        await log.TakeInAsync("from jory", elsewhere.ToBytes());
        Assert.Equal(merged, log.Document.ToBytes().ToArray());
        var again = new DeviceLog(device);
        await again.OpenDeviceAsync();
        Assert.Equal(merged, again.Document.ToBytes().ToArray());
    }

    [Fact]
    public async Task A_body_erased_elsewhere_does_not_stay_on_the_device()
    {
        var log = await OpenAsync();
        await log.NoteAsync(new ToldFact { Who = "a neighbour", Text = "their name and number" });
        var erased = Erasure.Erase(log.Document, log.Document.Entries[^1]);
        await log.TakeInAsync("erased", erased.ToBytes());
        var kept = await device.ReadAsync("memorial-garden", 0);
        Assert.DoesNotContain("their name", Text(kept.Value.Bytes), StringComparison.Ordinal);
        Assert.Equal(erased.ToBytes().ToArray(), log.Document.ToBytes().ToArray());
    }

    [Fact]
    public async Task A_log_of_another_property_is_kept_beside_the_first()
    {
        var log = await OpenAsync();
        await log.NoteAsync(Ohms("s9", "18.4 ohm"));
        var before = log.Document.ToBytes().ToArray();
        var other = LogDocument.Read(ReadOnlyMemory<byte>.Empty).With(Pen.Seal("garden-2", "a", null, new HybridTime(1, 0), new BoxFact { Id = "b1" }).Value);
        await log.TakeInAsync("other", other.ToBytes());
        Assert.Equal(other.ToBytes().ToArray(), log.Document.ToBytes().ToArray());
        Assert.Equal(0, log.NotBackedUp);
        await log.TakeInAsync("Served log", demo);
        Assert.Equal(before, log.Document.ToBytes().ToArray());
        Assert.Equal(1, log.NotBackedUp);
    }

    [Fact]
    public async Task A_saved_copy_and_a_log_that_comes_back_both_count_as_backed_up()
    {
        var log = await OpenAsync();
        await log.NoteAsync(Ohms("s9", "18.4 ohm"));
        await log.HandOutAsync();
        Assert.Equal(("memorial-garden.jsonl", 0L), (device.HandedOut.Single().Name, log.NotBackedUp));
        Assert.Equal(log.Document.ToBytes().ToArray(), device.HandedOut.Single().Bytes);
        await log.NoteAsync(Ohms("s8", "30 ohm"));
        Assert.Equal(1, log.NotBackedUp);
        await log.TakeInAsync("server", log.Document.ToBytes());
        Assert.Equal(0, log.NotBackedUp);
    }

    [Fact]
    public async Task A_note_and_its_taking_back_are_one_note_that_is_not_backed_up()
    {
        var log = await OpenAsync();
        var entry = (await log.NoteAsync(Ohms("s9", "18.4 ohm"))).Value.Id.ToString();
        await log.NoteAsync(new StrikeFact { Entry = entry });
        Assert.Equal(1, log.NotBackedUp);
        await log.NoteAsync(new RestoreFact { Entry = entry });
        await log.NoteAsync(Ohms("s8", "30 ohm"));
        Assert.Equal(2, log.NotBackedUp);
        Assert.Equal(2, (await log.AtStakeAsync("memorial-garden")).Value.Notes);
        await log.HandOutAsync();
        await log.NoteAsync(new StrikeFact { Entry = entry });
        Assert.Equal(1, log.NotBackedUp);
    }

    [Fact]
    public async Task A_log_that_is_begun_here_is_kept_under_an_id_made_from_its_name()
    {
        var log = new DeviceLog(device);
        await log.OpenDeviceAsync();
        await log.TakeInAsync(DeviceLog.Served, ReadOnlyMemory<byte>.Empty);
        Assert.Null(await log.BeginAsync(Named("Rose Garden, east")));
        Assert.Equal(("rose-garden-east", "Rose Garden, east", 1L), (log.Document.Property, log.Name, log.NotBackedUp));
        Assert.True((await log.NoteAsync(new BoxFact { Id = "b1" })).Succeeded);
        var again = new DeviceLog(device);
        await again.OpenDeviceAsync();
        Assert.Equal(log.Document.ToBytes().ToArray(), again.Document.ToBytes().ToArray());
        Assert.Empty(again.Document.Problems);
        Assert.Null(await again.BeginAsync(Named("Rose garden (east)")));
        Assert.Equal("rose-garden-east-2", again.Document.Property);
    }

    private static PropertyFact Named(string name) => new() { Name = name, Zone = "Etc/UTC" };

    private async Task<DeviceLog> OpenAsync()
    {
        var log = new DeviceLog(device);
        await log.OpenDeviceAsync();
        await log.TakeInAsync("Served log", demo);
        return log;
    }

    private static ReadingFact Ohms(string station, string shown) => new() { How = "station ohms", Stations = [station], Value = Shown.Parse(shown).Value };

    private static string Text(ReadOnlyMemory<byte> bytes) => Encoding.UTF8.GetString(bytes.Span);
}
