using Underturf.Networks.Hydraulics;
using Underturf.Numerics;
using Underturf.Quantities;

namespace Underturf.References.Tests.Pipes;

/// <summary>
/// A grid of streets with an outlet at every junction and a body of water at two corners, as large as one likes. Pipes grow with the grid, so
/// that every outlet has pressure. All invented.
/// </summary>
internal sealed class GridPipes
{
    internal const double Exponent = 0.5;

    private readonly int rows;
    private readonly int columns;
    private readonly double[] elevationMetres;
    private readonly double[] lengthMetres;
    private readonly double[] insideMetres;
    private readonly double[] outletAtOnePascal;

    internal GridPipes(int rows, int columns, ulong seed)
    {
        var random = new SeededGenerator(seed);
        (this.rows, this.columns) = (rows, columns);
        var (junctions, grown) = (rows * columns, Math.Sqrt(rows * columns / 500.0));
        var pipes = (rows * (columns - 1)) + (columns * (rows - 1));
        double[] inches = [3.068, 4.026, 6.065];
        elevationMetres = [.. Enumerable.Range(0, junctions).Select(_ => 6 * random.NextDouble())];
        lengthMetres = [.. Enumerable.Range(0, pipes).Select(_ => 6 + (18 * random.NextDouble()))];
        insideMetres = [.. Enumerable.Range(0, pipes).Select(_ => grown * inches[random.NextInt(3)] * 0.0254)];
        outletAtOnePascal = [.. Enumerable.Range(0, junctions).Select(_ => Units.From(0.05 + (0.3 * random.NextDouble()), "gpm") / Math.Sqrt(Units.From(1, "psi")))];
        WideMetres = grown * 12 * 0.0254;
    }

    private double WideMetres { get; }

    /// <summary>From numbers to a network, which is part of what is timed.</summary>
    internal PipeNetwork Network()
    {
        var network = new PipeNetwork(new Water(288.15));
        var friction = Friction.HazenWilliams(140);
        for (var k = 0; k < elevationMetres.Length; k++)
        {
            network.AddOutlet("outlet", network.AddJunction("junction", elevationMetres[k]), new Outlet(outletAtOnePascal[k], Exponent));
        }

        for (int k = 0, pipe = 0; k < elevationMetres.Length; k++)
        {
            if ((k + 1) % columns != 0)
            {
                network.Add(PipeElement.Pipe("pipe", k, k + 1, lengthMetres[pipe], insideMetres[pipe++], friction));
            }

            if (k / columns < rows - 1)
            {
                network.Add(PipeElement.Pipe("pipe", k, k + columns, lengthMetres[pipe], insideMetres[pipe++], friction));
            }
        }

        network.Add(PipeElement.Pipe("first", network.AddReservoir("first", 61), 0, 15, WideMetres, friction));
        network.Add(PipeElement.Pipe("last", network.AddReservoir("last", 59.5), elevationMetres.Length - 1, 15, WideMetres, friction));
        return network;
    }
}
