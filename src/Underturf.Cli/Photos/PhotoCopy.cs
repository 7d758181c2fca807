using System.IO.Compression;
using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Cli;

/// <summary>Photos on their way: from where the logs had them to where the united one is.</summary>
internal static class PhotoCopy
{
    /// <summary>Each photo from the first that has it whole.</summary>
    /// <returns>How many are there now, of all that are noted.</returns>
    public static (int There, int Noted) ToFolder(PhotoAlbum album, IReadOnlyList<PhotoSource> sources, string log)
    {
        var there = 0;
        foreach (var photo in album.All.Select(photo => photo.Fact))
        {
            if (sources.FirstOrDefault(source => source.Holds(photo) == true)?.Open(photo) is { } bytes)
            {
                using (bytes)
                {
                    Keep(PhotoSource.PathOf(log, photo), bytes);
                }

                there++;
            }
        }

        return (there, album.All.Count);
    }

    /// <summary>A pack of a log and its photos; pictures are packed as they are, they do not get smaller.</summary>
    public static (int There, int Noted) ToPack(PhotoAlbum album, IReadOnlyList<PhotoSource> sources, string name, ReadOnlySpan<byte> log, Stream pack)
    {
        using var zip = new ZipArchive(pack, ZipArchiveMode.Create, leaveOpen: true);
        using (var entry = zip.CreateEntry(name).Open())
        {
            entry.Write(log);
        }

        var there = 0;
        foreach (var photo in album.All.Select(photo => photo.Fact))
        {
            if (sources.FirstOrDefault(source => source.Holds(photo) == true)?.Open(photo) is { } bytes)
            {
                using var from = bytes;
                using var to = zip.CreateEntry(PhotoFile.NameOf(photo), CompressionLevel.NoCompression).Open();
                from.CopyTo(to);
                there++;
            }
        }

        return (there, album.All.Count);
    }

    /// <summary>What is there already under its hash is left alone.</summary>
    public static void Keep(string path, Stream bytes)
    {
        if (File.Exists(path))
        {
            return;
        }

        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        using var whole = new MemoryStream();
        bytes.CopyTo(whole);
        Files.Write(path, whole.ToArray());
    }
}
