namespace Underturf.FieldApp;

/// <summary>The note that was stored last.</summary>
/// <param name="Entry">As the log names it, "writer/seq".</param>
/// <param name="Struck">True where it was taken back again.</param>
public sealed record StoredNote(string Entry, string Words, bool Struck);
