using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Browser;

/// <summary>Photos kept in memory. What is taken next can be laid ready, or refused.</summary>
internal sealed class MemoryShelf : IPhotoShelf
{
    public const string Hash = "1d3eb0cb85362396de680cc48ec43ef5f76a38a79668948b2c0c6b3b016677dd";

    private readonly HashSet<string> kept = [];

    public TakenPhoto Next { get; set; } = new(Hash, "image/jpeg", 4000, 3000);

    public Problem? Full { get; set; }

    public bool HandedOut { get; private set; }

    public List<string> Shown { get; } = [];

    public Task<Outcome<TakenPhoto>> TakeAsync(string input) => TakeAgainAsync();

    public Task<Outcome<TakenPhoto>> TakeAgainAsync()
    {
        if (Full is null)
        {
            kept.Add(Next.Hash);
        }

        return Task.FromResult<Outcome<TakenPhoto>>(Full is { } full ? full : Next);
    }

    public void HandOutInHand() => HandedOut = true;

    public Task<string?> SmallAsync(string hash) => Task.FromResult(kept.Contains(hash) ? $"blob:{hash}" : null);

    public Task ShowAsync(PhotoFact photo, string words)
    {
        Shown.Add(photo.Hash);
        return Task.CompletedTask;
    }

    public Task<IReadOnlyList<PhotoFact>> UnsavedAsync(IReadOnlyList<PhotoFact> photos) => Task.FromResult(photos);

    public Task<Problem?> ForgetAsync(IReadOnlyList<PhotoFact> photos)
    {
        kept.ExceptWith(photos.Select(photo => photo.Hash));
        return Task.FromResult<Problem?>(null);
    }

    public Task<Outcome<int>> HandOutPackAsync(string name, ReadOnlyMemory<byte> log, IReadOnlyList<PhotoFact> photos) => Task.FromResult<Outcome<int>>(photos.Count);

    public Task<Outcome<ReadOnlyMemory<byte>>> TakeInPackAsync(string input) => throw new InvalidOperationException("No test here opens a pack.");
}
