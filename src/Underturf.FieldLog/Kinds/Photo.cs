namespace Underturf.FieldLog;

/// <summary>A photo: the picture stays a file of its own, the log names it by the hash of its bytes. Noted again under its hash it is the same photo.</summary>
public sealed record PhotoFact : Fact
{
    /// <summary>SHA-256 of the bytes as the camera wrote them.</summary>
    public required string Hash { get; init; }

    /// <summary>One of <see cref="PhotoFile.MediaTypes"/>.</summary>
    public required string Media { get; init; }

    /// <summary>Pixels across, as stored in the file.</summary>
    public int? Width { get; init; }

    /// <summary>Pixels down, as stored in the file.</summary>
    public int? Height { get; init; }

    /// <summary>The place where it was taken.</summary>
    public string? Place { get; init; }

    /// <summary>The thing it shows. The notes that it belongs to have it among their photos.</summary>
    public string? About { get; init; }

    public string? Caption { get; init; }
}
