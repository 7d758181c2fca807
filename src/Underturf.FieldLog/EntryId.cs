namespace Underturf.FieldLog;

/// <summary>Who wrote an entry and which of that writer's entries it is, counted from 1 for each writer and property.</summary>
public readonly record struct EntryId(string Writer, long Seq) : IComparable<EntryId>
{
    public int CompareTo(EntryId other)
    {
        var byWriter = string.CompareOrdinal(Writer, other.Writer);
        return byWriter != 0 ? byWriter : Seq.CompareTo(other.Seq);
    }

    public override string ToString() => $"{Writer}/{Seq}";
}
