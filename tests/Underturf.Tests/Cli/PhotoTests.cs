using System.IO.Compression;
using Underturf.FieldLog;

namespace Underturf.Tests.Cli;

/// <summary>Photos beside a log, checked, brought together and packed.</summary>
public sealed class PhotoTests : IDisposable
{
    /// <summary>The head of a JPEG and some invented bytes.</summary>
    private static readonly byte[] jpeg = [0xFF, 0xD8, 0xFF, 0xC0, 0, 17, 8, 0x01, 0x2C, 0x01, 0x90, 3, 0, 0, 7, 7, 7];

    private readonly Workbench bench = new();

    public void Dispose() => bench.Dispose();

    private static string NameOf(byte[] bytes) => $"photos/{PhotoFile.HashOf(bytes)}.jpg";

    private void Begin()
    {
        bench.Write("notes.jsonl", """{"kind":"box","id":"b7","label":"7"}""");
        bench.Run("note", "log.jsonl", "notes.jsonl", "--property", "garden", "--data", "me").Worked();
        bench.Write("IMG_1.jpg", jpeg);
        bench.Run("note", "photo", "log.jsonl", "--file", "IMG_1.jpg", "--place", "b7", "--caption", "lid cracked", "--data", "me").Worked("1 noted in log.jsonl");
    }

    [Fact]
    public void A_photo_is_copied_beside_the_log_as_it_is_and_shown_with_its_place()
    {
        Begin();
        Assert.Equal(jpeg, bench.Read(NameOf(jpeg)));
        var photo = (PhotoFact)LogDocument.Read(bench.Read("log.jsonl")).Entries[^1].Fact!;
        Assert.Equal((PhotoFile.HashOf(jpeg), "image/jpeg", 400, 300, "b7"), (photo.Hash, photo.Media, photo.Width, photo.Height, photo.Place));
        bench.Run("show", "log.jsonl").Worked("Photo of box 7: lid cracked", NameOf(jpeg));
        bench.Run("check", "log.jsonl").Worked("0 things wrong, 0 to note");
    }

    [Fact]
    public void A_photo_that_is_not_there_is_to_note_and_one_with_other_bytes_is_wrong()
    {
        Begin();
        File.WriteAllBytes(bench.Path(NameOf(jpeg)), [.. jpeg, 8]);
        bench.Run("check", "log.jsonl").Failed(1, "other bytes than were noted", NameOf(jpeg));
        File.Delete(bench.Path(NameOf(jpeg)));
        bench.Run("check", "log.jsonl").Worked("0 things wrong, 1 to note").Said("is not there");
    }

    [Fact]
    public void Something_that_is_no_picture_is_refused_and_nothing_is_noted()
    {
        Begin();
        bench.Write("notes.txt", "no picture");
        bench.Run("note", "photo", "log.jsonl", "--file", "notes.txt", "--data", "me").Failed(1, "notes.txt", "no picture", "image/jpeg");
        Assert.Single(Directory.GetFiles(bench.Path("photos")));
    }

    [Fact]
    public void A_pack_holds_log_and_photos_reads_as_a_log_and_merges_back_to_both()
    {
        Begin();
        bench.Run("merge", "log.jsonl", "--out", "garden.zip").Worked("Photos: 1 of 1");
        bench.Run("check", "garden.zip").Worked("0 things wrong, 0 to note");
        Directory.CreateDirectory(bench.Path("away"));
        bench.Run("merge", "garden.zip", "--out", "away/log.jsonl").Worked("Photos: 1 of 1");
        Assert.Equal(bench.Read("log.jsonl"), bench.Read("away/log.jsonl"));
        Assert.Equal(jpeg, bench.Read($"away/{NameOf(jpeg)}"));
        bench.Run("note", "garden.zip", "notes.jsonl", "--data", "me").Failed(1, "is a pack", "underturf merge garden.zip");
    }

    [Fact]
    public void A_pack_that_is_damaged_or_has_no_log_is_refused_with_words()
    {
        bench.Write("cut.zip", [(byte)'P', (byte)'K', 3, 4, 0, 0]);
        bench.Run("check", "cut.zip").Failed(1, "cut off or damaged");
        using (var zip = ZipFile.Open(bench.Path("empty.zip"), ZipArchiveMode.Create))
        {
            zip.CreateEntry("photos/a.jpg");
        }

        bench.Run("show", "empty.zip").Failed(1, "holds no log");
    }
}
