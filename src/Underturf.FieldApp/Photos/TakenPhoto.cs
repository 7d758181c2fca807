using Underturf.FieldLog;

namespace Underturf.FieldApp;

/// <summary>A photo that the device keeps.</summary>
/// <param name="Hash">SHA-256 of its bytes.</param>
public sealed record TakenPhoto(string Hash, string Media, int? Width, int? Height)
{
    /// <summary>Whether the log names it already.</summary>
    public bool Noted { get; init; }

    public PhotoFact ToFact(string? place = null) => new() { Hash = Hash, Media = Media, Width = Width, Height = Height, Place = place };
}
