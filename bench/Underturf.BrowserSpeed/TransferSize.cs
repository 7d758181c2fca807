using System.Globalization;
using System.IO.Compression;

namespace Underturf.Benchmarks;

/// <summary>What a page weighs on its way to a phone, as a server sends it that compresses with Brotli as well as it can.</summary>
internal static class TransferSize
{
    private const int Told = 8;

    public static void Tell(string own, string empty)
    {
        var (mine, least) = (Files(own), Files(empty));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"The page: {Mega(mine)} compressed, {Raw(own)} as it lies; the empty one: {Mega(least)} and {Raw(empty)}."));
        Console.WriteLine();
        Console.WriteLine("| file | compressed, kB |");
        Console.WriteLine("|---|---|");
        foreach (var (name, bytes) in mine.OrderByDescending(file => file.Bytes).Take(Told))
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {name} | {bytes / 1000.0:F0} |"));
        }

        Console.WriteLine();
    }

    private static string Mega(IEnumerable<(string Name, long Bytes)> files) => string.Create(CultureInfo.InvariantCulture, $"{files.Sum(file => file.Bytes) / 1e6:F2} MB");

    private static string Raw(string folder) => string.Create(CultureInfo.InvariantCulture, $"{Paths(folder).Sum(path => new FileInfo(path).Length) / 1e6:F2} MB");

    private static List<(string Name, long Bytes)> Files(string folder) => [.. Paths(folder).Select(path => (Path.GetRelativePath(folder, path), Compressed(path)))];

    private static IEnumerable<string> Paths(string folder) => Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories);

    private static long Compressed(string path)
    {
        using var packed = new MemoryStream();
        using (var brotli = new BrotliStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
        {
            brotli.Write(File.ReadAllBytes(path));
        }

        return packed.Length;
    }
}
