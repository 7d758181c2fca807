namespace Underturf.Reasoning.Water;

/// <summary>For each reading of the meter, whether and how what runs somewhere would show in it.</summary>
internal sealed class Fed
{
    private readonly Passage[] passages;

    public Fed(IEnumerable<Passage> passages)
    {
        this.passages = [.. passages];
        Key = string.Concat(this.passages.Select(p => p.Key));
        Through = [.. this.passages.SelectMany(p => new[] { p.First, p.Second }).Where(v => v >= 0).Distinct().Order()];
    }

    public int Count => passages.Length;

    /// <summary>The same for the same.</summary>
    public string Key { get; }

    /// <summary>Doubted valves that it is fed through in some reading.</summary>
    public IReadOnlyList<int> Through { get; }

    public Passage this[int reading] => passages[reading];

    /// <summary>The same for what shows the same in some of them.</summary>
    public string KeyOf(IEnumerable<int> readings) => string.Concat(readings.Select(r => passages[r].Key));

    public static Fed Nowhere(int readings) => new(Enumerable.Repeat(Passage.None, readings));

    public Fed And(Fed other) => new(passages.Zip(other.passages, (a, b) => a.Shows && b.Shows ? Freer(a, b) : Passage.None));

    public Fed Or(Fed other) => new(passages.Zip(other.passages, Freer));

    public Fed Without(Fed other) => new(passages.Zip(other.passages, (a, b) => b.Shows ? Passage.None : a));

    private static Passage Freer(Passage a, Passage b) => a.MeanShare >= b.MeanShare ? a : b;
}
