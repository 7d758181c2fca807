using Underturf.Networks.Hydraulics;

namespace Underturf.References.Tests.Pipes;

/// <summary>The public-domain example network Net1 at the start, printed pressures in psi (seen), by the factor 0.4333 psi a foot.</summary>
public sealed class ExampleNetworkTests
{
    private const double Foot = 0.3048;
    private const double Inch = 0.0254;

    /// <summary>The example's gallon a minute: a cubic foot a second has 448.831 of them.</summary>
    private const double Gpm = Foot * Foot * Foot / 448.831;

    private static readonly (int Name, double ElevationFeet, double Gpm, double Psi)[] junctions =
    [
        (10, 710, 0, 127.5407), (11, 710, 150, 119.2573), (12, 700, 150, 117.0213), (13, 695, 100, 118.6690), (21, 700, 150, 117.6612),
        (22, 695, 200, 118.7582), (23, 690, 150, 120.7370), (31, 700, 100, 115.8608), (32, 710, 100, 110.7902),
    ];

    private static readonly (int A, int B, double Feet, double Inches)[] pipes =
    [
        (10, 11, 10530, 18), (11, 12, 5280, 14), (12, 13, 5280, 10), (21, 22, 5280, 10), (22, 23, 5280, 12), (31, 32, 5280, 6), (2, 12, 200, 18),
        (11, 21, 5280, 10), (12, 22, 5280, 12), (13, 23, 5280, 8), (21, 31, 5280, 8), (22, 32, 5280, 6),
    ];

    [Fact]
    public void Pressures_of_the_example_network_are_those_printed()
    {
        var network = new PipeNetwork(new Water(288.15));
        var nodes = junctions.ToDictionary(j => j.Name, j => network.AddJunction($"{j.Name}", j.ElevationFeet * Foot, j.Gpm * Gpm));
        nodes[2] = network.AddReservoir("tank 2", 970 * Foot);
        foreach (var (a, b, feet, inches) in pipes)
        {
            network.Add(PipeElement.Pipe($"{a}-{b}", nodes[a], nodes[b], feet * Foot, inches * Inch, Friction.HazenWilliams(100)));
        }

        AddPump(network, nodes[10]);
        var solution = network.Solve().Value;

        Assert.InRange(solution.MassResidualCubicMetresPerSecond, 0, 1e-9);
        Assert.All(junctions, j => Assert.Equal(j.Psi, (solution.HeadMetres(nodes[j.Name])!.Value / Foot - j.ElevationFeet) * 0.4333, 0.0005));
    }

    /// <summary>Over water at 800 ft; by one point, 1500 gpm at 250 ft: it lifts 4/3 of that at rest and loses the third with the square of the flow.</summary>
    private static void AddPump(PipeNetwork network, int to)
    {
        var flow = 1500 * Gpm;
        var raised = network.AddReservoir("9 as its pump raises it", (800 + (250 * 4 / 3.0)) * Foot);
        network.Add(new PipeElement("pump 9", PipeElementKind.Supply, raised, to) { ResistancePerFlowSquaredFactor = 250 / 3.0 * Foot / (flow * flow), IsOneWay = true });
    }
}
