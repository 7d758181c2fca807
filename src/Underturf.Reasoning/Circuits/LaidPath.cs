using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Circuits;

/// <summary>A path laid into a network: its output's element, and at each leg's far end the nodes of its conductor and of its common.</summary>
/// <param name="output">The element of the switch at the controller.</param>
/// <param name="terminal">Nodes at the controller: the station's terminal and the common's.</param>
internal sealed class LaidPath(StationPath path, int output, (int Conductor, int Common) terminal)
{
    private readonly (int Conductor, int Common)[] ends = new (int, int)[path.Legs.Count];

    public StationPath Path => path;

    public int Output => output;

    /// <param name="leg">Index of a leg, or -1 for the controller.</param>
    public (int Conductor, int Common) At(int leg) => leg < 0 ? terminal : ends[leg];

    public void End(int leg, int conductor, int common) => ends[leg] = (conductor, common);
}
