namespace Underturf.FieldLog;

/// <summary>The part of an entry that the chain hashes and that stays when a body is erased.</summary>
/// <param name="Property">Opaque id of the property.</param>
/// <param name="Previous">Hash of the writer's previous header; empty for the first.</param>
/// <param name="BodyHash">Hash of the exact bytes of the body.</param>
/// <param name="Noted">When it was written down.</param>
public sealed record Header(string Property, EntryId Id, string Previous, string BodyHash, HybridTime Noted)
{
    /// <summary>Hash of this header's own exact bytes: what the writer's next header names as its previous.</summary>
    public string Hash { get; init; } = "";
}

/// <summary>One fact of the log with its header.</summary>
/// <param name="Fact">What it says; nothing where the body was erased, could not be read, or is of a kind or version not known here.</param>
/// <param name="Kind">The stored kind name; empty where the body was erased or names none.</param>
/// <param name="Version">The stored version of the kind; 0 where there is none.</param>
/// <param name="At">When it was so, with the offset that the writer gave; the time of noting where none was given.</param>
/// <param name="Line">The exact stored bytes, without the line end.</param>
public sealed record Entry(Header Header, string Kind, int Version, Fact? Fact, DateTimeOffset At, ReadOnlyMemory<byte> Line)
{
    public EntryId Id => Header.Id;

    /// <summary>Where it stands among all entries.</summary>
    public Moment Moment => new(At, Header.Noted, Id);

    /// <summary>True where the body was taken out for privacy and only the header is left.</summary>
    public bool Erased => LineForm.IsErased(Line.Span);
}
