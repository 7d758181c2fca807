namespace Underturf.Reasoning.Water;

/// <summary>For each reading of the meter, whether what runs somewhere would show in it.</summary>
internal sealed class Fed
{
    private readonly bool[] shows;

    public Fed(IEnumerable<bool> shows)
    {
        this.shows = [.. shows];
        Key = string.Concat(this.shows.Select(f => f ? '1' : '0'));
    }

    public int Count => shows.Length;

    /// <summary>The same for the same.</summary>
    public string Key { get; }

    public bool this[int reading] => shows[reading];

    public static Fed Nowhere(int readings) => new(new bool[readings]);

    public Fed And(Fed other) => new(shows.Zip(other.shows, (a, b) => a && b));

    public Fed Or(Fed other) => new(shows.Zip(other.shows, (a, b) => a || b));

    public Fed Without(Fed other) => new(shows.Zip(other.shows, (a, b) => a && !b));

    public bool StartsWith(Fed other) => Key.StartsWith(other.Key, StringComparison.Ordinal);
}
