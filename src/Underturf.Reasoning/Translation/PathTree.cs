namespace Underturf.Reasoning.Translation;

/// <summary>Collects the legs of a path; a leg that two valves share is there once.</summary>
internal sealed class PathTree(string controller)
{
    private readonly List<Leg> legs = [];

    public string Controller { get; } = controller;

    public IReadOnlyList<Leg> Legs => legs;

    /// <summary>True where a run had to be assumed.</summary>
    public bool Guessed { get; private set; }

    public int Extend(string cable, string to, int parent, Func<string, int, Leg> make)
    {
        var known = legs.FindIndex(l => l.Id == cable && l.To == to && l.Parent == parent);
        if (known >= 0)
        {
            return known;
        }

        legs.Add(make(parent < 0 ? Controller : legs[parent].To, parent));
        return legs.Count - 1;
    }

    public int Guess(string place, Func<int, Leg> make)
    {
        Guessed = true;
        return Extend($"run to {place}", place, -1, (_, parent) => make(parent));
    }
}
