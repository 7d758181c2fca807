using System.Collections;

namespace Underturf.FieldLog;

/// <summary>
/// A list that grows without being copied: the longer list shares its beginning with the one that it grew from, which sees nothing of what came
/// after. A second list grown from the same one gets a beginning of its own.
/// </summary>
internal sealed class GrownList<T> : IReadOnlyList<T>
{
    private readonly ReadOnlyMemory<T> items;
    private readonly Stem? stem;

    private GrownList(ReadOnlyMemory<T> items, Stem? stem) => (this.items, this.stem) = (items, stem);

    public int Count => items.Length;

    public T this[int index] => items.Span[index];

    public static GrownList<T> Of(ReadOnlyMemory<T> items) => new(items, null);

    public static GrownList<T> Of(IEnumerable<T> items) => items as GrownList<T> ?? new(items.ToArray(), null);

    public GrownList<T> With(ReadOnlySpan<T> more)
    {
        var grown = stem?.Grow(Count, more) is { } length ? stem : Stem.Of(items.Span, more);
        return new GrownList<T>(grown.Items.AsMemory(0, Count + more.Length), grown);
    }

    public ReadOnlyMemory<T> AsMemory() => items;

    public IEnumerator<T> GetEnumerator()
    {
        for (var i = 0; i < items.Length; i++)
        {
            yield return items.Span[i];
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>What lists have in common; only the longest of them can still grow in it.</summary>
    private sealed class Stem(T[] items, int used)
    {
        private readonly Lock growing = new();
        private int used = used;

        public T[] Items => items;

        public static Stem Of(ReadOnlySpan<T> items, ReadOnlySpan<T> more)
        {
            var (length, roomy) = (items.Length + more.Length, new T[(2 * items.Length) + more.Length]);
            items.CopyTo(roomy);
            more.CopyTo(roomy.AsSpan(items.Length));
            return new Stem(roomy, length);
        }

        /// <summary>The new length, or nothing where another list has grown here, or there is no room.</summary>
        public int? Grow(int from, ReadOnlySpan<T> more)
        {
            lock (growing)
            {
                if (used != from || from + more.Length > items.Length)
                {
                    return null;
                }

                more.CopyTo(items.AsSpan(from));
                return used += more.Length;
            }
        }
    }
}
