namespace Underturf.Reasoning.Diagnosis;

/// <summary>Suspects in any order, as one key.</summary>
internal readonly struct SuspectSet(IReadOnlyList<Suspect> suspects) : IEquatable<SuspectSet>
{
    private readonly IReadOnlyList<Suspect> suspects = suspects;

    public bool Equals(SuspectSet other)
    {
        if (suspects.Count != other.suspects.Count)
        {
            return false;
        }

        foreach (var suspect in suspects)
        {
            if (!other.suspects.Contains(suspect))
            {
                return false;
            }
        }

        return true;
    }

    public override bool Equals(object? obj) => obj is SuspectSet other && Equals(other);

    public override int GetHashCode()
    {
        var hash = suspects.Count;
        foreach (var suspect in suspects)
        {
            hash ^= suspect.GetHashCode();
        }

        return hash;
    }
}
