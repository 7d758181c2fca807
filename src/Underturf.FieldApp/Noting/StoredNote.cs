namespace Underturf.FieldApp;

/// <summary>The note that was stored last.</summary>
/// <param name="Entries">As the log names them, "writer/seq": what one tap stored is taken back together.</param>
/// <param name="Struck">True where it was taken back again.</param>
public sealed record StoredNote(IReadOnlyList<string> Entries, string Words, bool Struck);
