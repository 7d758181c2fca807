using System.Collections.Immutable;

namespace Underturf.Property;

/// <summary>Which ids are one thing: the smallest id (ordinal) of a group stands for all of them.</summary>
public sealed record Identity(ImmutableDictionary<string, string> Parents)
{
    public static Identity None { get; } = new(ImmutableDictionary<string, string>.Empty);

    public string Of(string id)
    {
        var at = id;
        while (Parents.TryGetValue(at, out var parent))
        {
            at = parent;
        }

        return at;
    }

    public Identity Join(string a, string b)
    {
        var (first, second) = (Of(a), Of(b));
        return string.CompareOrdinal(first, second) switch
        {
            0 => this,
            < 0 => new Identity(Parents.SetItem(second, first)),
            _ => new Identity(Parents.SetItem(first, second)),
        };
    }
}
