using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>What the page asks of its host: a log to open, and what the log lets one say.</summary>
public interface INotebook
{
    /// <summary>The bytes of the log that is offered on opening the page.</summary>
    Task<Outcome<ReadOnlyMemory<byte>>> FetchOfferedLogAsync();

    /// <summary>Works out explanations and moves. The host lets the page paint its progress text before it starts.</summary>
    Task<OpenedLog> OpenAsync(ReadOnlyMemory<byte> log);
}
