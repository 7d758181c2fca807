namespace Underturf.Reasoning.Diagnosis;

/// <summary>Suspects in any order, as one key.</summary>
internal readonly struct SuspectSet(Suspect[] suspects) : IEquatable<SuspectSet>
{
    private readonly Suspect[] suspects = suspects;

    public bool Equals(SuspectSet other)
    {
        if (suspects.Length != other.suspects.Length)
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
        var hash = suspects.Length;
        foreach (var suspect in suspects)
        {
            hash ^= suspect.GetHashCode();
        }

        return hash;
    }
}
