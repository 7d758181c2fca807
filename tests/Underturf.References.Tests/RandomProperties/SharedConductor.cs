using Underturf.Networks.Wiring.HalfWave;

namespace Underturf.References.Tests.RandomProperties;

/// <summary>
/// Two branches of opposite polarity on one conductor, each with a diode at the valve, at the controller or at both ends. Diodes as silicon
/// rectifiers of one ampere are (invented spread).
/// </summary>
internal sealed class SharedConductor(DiodeNetwork circuit, Draws draws, string name)
{
    /// <returns>The conductor's end at the controller, behind the diodes there.</returns>
    internal int AddControllerEnd(IReadOnlyList<int> terminals)
    {
        var head = circuit.Wiring.Node($"{name} head");
        for (var branch = 0; branch < terminals.Count; branch++)
        {
            AddDiode($"{name} controller {branch}", terminals[branch], head, branch);
        }

        return head;
    }

    /// <returns>The lead of a branch, behind its diode.</returns>
    internal int AddValveEnd(int inBox, int branch)
    {
        var lead = circuit.Wiring.Node($"{name} branch {branch}");
        AddDiode($"{name} valve {branch}", inBox, lead, branch);
        return lead;
    }

    private void AddDiode(string diode, int outer, int inner, int branch)
    {
        var junction = new Junction(draws.Decades(-10, -7), draws.Between(1, 2), draws.Between(280, 320));
        var (anode, cathode) = branch == 0 ? (outer, inner) : (inner, outer);
        circuit.AddDiode(diode, anode, cathode, junction, draws.Between(0.02, 0.2));
    }
}
