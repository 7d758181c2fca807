using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>What a page asks of the device for photos: to keep them unchanged, to show them, to hand them out.</summary>
public interface IPhotoShelf
{
    /// <summary>Keeps the picture that was chosen in an input of the page. It is there for good when it answers; what is refused stays in hand.</summary>
    /// <param name="input">Id of the input.</param>
    Task<Outcome<TakenPhoto>> TakeAsync(string input);

    /// <summary>Tries again to keep what was refused.</summary>
    Task<Outcome<TakenPhoto>> TakeAgainAsync();

    /// <summary>Hands out as a file what was refused.</summary>
    void HandOutInHand();

    /// <summary>Address of a small picture; empty where only the original is here, nothing where neither is.</summary>
    Task<string?> SmallAsync(string hash);

    /// <summary>Shows the original over the page until it is closed.</summary>
    Task ShowAsync(PhotoFact photo, string words);

    /// <summary>Those of these that are here and stand in no copy elsewhere, as far as the device knows.</summary>
    Task<IReadOnlyList<PhotoFact>> UnsavedAsync(IReadOnlyList<PhotoFact> photos);

    /// <summary>Takes these off the device, for good.</summary>
    Task<Problem?> ForgetAsync(IReadOnlyList<PhotoFact> photos);

    /// <summary>Hands out a log and its photos as one file.</summary>
    /// <param name="name">Of the file and of the log in it, without its ending.</param>
    /// <returns>How many photos are in it: those that are on this device.</returns>
    Task<Outcome<int>> HandOutPackAsync(string name, ReadOnlyMemory<byte> log, IReadOnlyList<PhotoFact> photos);

    /// <summary>Keeps the photos of a pack that was chosen in an input, and gives the log in it.</summary>
    Task<Outcome<ReadOnlyMemory<byte>>> TakeInPackAsync(string input);
}
