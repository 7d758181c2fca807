using System.IO.Compression;
using Underturf.Quantities;

namespace Underturf.Cli;

/// <summary>A log packed with its photos: a zip file with the log, ending in ".jsonl", and the folder "photos".</summary>
internal static class LogPack
{
    private const string Ending = ".jsonl";

    /// <summary>The largest log that a pack is believed to hold, in bytes.</summary>
    private const long LargestLog = 1L << 30;

    private static readonly byte[] head = [(byte)'P', (byte)'K', 3, 4];

    public static bool IsNamed(FileInfo file) => file.Extension.Equals(".zip", StringComparison.OrdinalIgnoreCase);

    /// <summary>By its first bytes: a name can be anything.</summary>
    public static bool Is(FileInfo file)
    {
        if (!file.Exists)
        {
            return false;
        }

        using var stream = file.OpenRead();
        var first = new byte[head.Length];
        return stream.ReadAtLeast(first, first.Length, throwOnEndOfStream: false) == first.Length && first.AsSpan().SequenceEqual(head);
    }

    public static ZipArchive Open(FileInfo file)
    {
        try
        {
            return ZipFile.OpenRead(file.FullName);
        }
        catch (InvalidDataException)
        {
            throw new Refusal(new Problem(file.Name, "is a zip file that is cut off or damaged", "Copy it again from where it was saved"));
        }
    }

    /// <summary>The bytes of the one log in it.</summary>
    public static byte[] Log(FileInfo file)
    {
        using var pack = Open(file);
        var logs = pack.Entries.Where(entry => entry.FullName == entry.Name && entry.Name.EndsWith(Ending, StringComparison.OrdinalIgnoreCase)).ToList();
        if (logs is not [{ Length: <= LargestLog } log])
        {
            throw new Refusal(new Problem(file.Name, $"holds {(logs.Count == 1 ? "a log too large to be one" : logs.Count == 0 ? "no log" : $"{logs.Count} logs")}", $"A pack has one file ending in \"{Ending}\" beside the folder \"photos\": unpack it and name the log"));
        }

        try
        {
            using var bytes = new MemoryStream();
            using var stream = log.Open();
            stream.CopyTo(bytes);
            return bytes.ToArray();
        }
        catch (InvalidDataException)
        {
            throw new Refusal(new Problem(file.Name, "is a zip file that is cut off or damaged", "Copy it again from where it was saved"));
        }
    }
}
