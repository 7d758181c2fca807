namespace Underturf.FieldLog;

/// <summary>
/// Which entries somebody holds, told apart by content. An entry whose body was erased stands for the one that has it, so that the body does not come back; an
/// erased copy is news to whoever still has the body.
/// </summary>
public sealed class HeldEntries
{
    private readonly Dictionary<string, bool> erasedByHead = new(StringComparer.Ordinal);

    public HeldEntries(IEnumerable<Entry> entries) => Add(entries);

    /// <summary>Whether nothing of the entry would be news.</summary>
    public bool Has(Entry entry) => erasedByHead.TryGetValue(entry.Header.Hash, out var erased) && (erased || !entry.Erased);

    /// <summary>False where it was held before.</summary>
    public bool Add(Entry entry)
    {
        if (Has(entry))
        {
            return false;
        }

        erasedByHead[entry.Header.Hash] = entry.Erased;
        return true;
    }

    public void Add(IEnumerable<Entry> entries)
    {
        foreach (var entry in entries)
        {
            Add(entry);
        }
    }
}
