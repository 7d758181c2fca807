using System.IO.Compression;
using System.Security.Cryptography;
using Underturf.FieldLog;

namespace Underturf.Cli;

/// <summary>Where the photos of a log are: in the folder beside it, or in the pack that holds both.</summary>
internal sealed class PhotoSource : IDisposable
{
    private readonly FileInfo log;
    private readonly ZipArchive? pack;

    public PhotoSource(FileInfo log)
    {
        this.log = log;
        pack = LogPack.Is(log) ? LogPack.Open(log) : null;
    }

    public void Dispose() => pack?.Dispose();

    /// <summary>The bytes of a photo; nothing where the file is not there.</summary>
    public Stream? Open(PhotoFact photo)
    {
        var name = PhotoFile.NameOf(photo);
        if (pack is not null)
        {
            return pack.GetEntry(name)?.Open();
        }

        var path = PathOf(log.FullName, photo);
        return File.Exists(path) ? File.OpenRead(path) : null;
    }

    /// <summary>Whether its file is there with the bytes that were noted; nothing where it is not there.</summary>
    public bool? Holds(PhotoFact photo)
    {
        using var bytes = Open(photo);
        return bytes is null ? null : Convert.ToHexStringLower(SHA256.HashData(bytes)) == photo.Hash;
    }

    /// <summary>Where a photo of a log lies that is a file of its own.</summary>
    public static string PathOf(string log, PhotoFact photo) => Path.Combine(Path.GetDirectoryName(Path.GetFullPath(log))!, PhotoFile.NameOf(photo));
}
