using Underturf.FieldLog;

namespace Underturf.FieldApp;

/// <summary>A paper to hand over, made on the device.</summary>
/// <param name="Hash">SHA-256 of its bytes.</param>
/// <param name="Engine">Version of the engine that it was made with.</param>
/// <param name="Book">Version of the practice book that it was made with.</param>
public sealed record MadePaper(string FileName, string Title, byte[] Bytes, string Hash, string Engine, string Book)
{
    /// <summary>The note that it was handed over.</summary>
    public PaperIssuedFact ToFact() => new() { Paper = FileName, Hash = Hash, Engine = Engine, Book = Book };
}
