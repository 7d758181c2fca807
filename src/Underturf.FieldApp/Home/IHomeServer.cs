using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>The server that the page came from, wherever it can be reached. It offers one log, and may take what is noted in it.</summary>
public interface IHomeServer
{
    /// <summary>What a server answers to a device that it was never paired with, or no more.</summary>
    static Problem Unpaired { get; } = new("this device", "is not paired with the server", "Point the camera at the code in the server's window");

    /// <summary>The log as the server has it now.</summary>
    Task<Outcome<OfferedLog>> PullAsync();

    /// <summary>Hands lines to the server.</summary>
    /// <param name="lines">Whole lines, each ended by a line feed.</param>
    Task<Outcome<PushAnswer>> PushAsync(ReadOnlyMemory<byte> lines);

    /// <summary>Has a page told when the server may be back or have something new.</summary>
    void Listen(Func<Task> perhapsNew);
}

/// <summary>A log as a server has it.</summary>
/// <param name="TakesNotes">Whether the server adds to it what is handed to it.</param>
public sealed record OfferedLog(ReadOnlyMemory<byte> Bytes, bool TakesNotes);

/// <summary>What a server says to lines that it was handed.</summary>
/// <param name="Added">How many of them it lacked and has now.</param>
/// <param name="Refused">Each that it did not take, and why.</param>
public sealed record PushAnswer(int Added, IReadOnlyList<Problem> Refused);
