using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Reasoning.Water;

/// <summary>What joins what with pipe, as far as anybody has noted it.</summary>
internal sealed class WaterGraph
{
    private readonly Dictionary<string, List<(string Other, string Pipe)>> around = new(StringComparer.Ordinal);
    private readonly PropertyView view;

    public WaterGraph(PropertyView view)
    {
        this.view = view;
        foreach (var (id, pipe) in view.Pipes)
        {
            var (from, to) = (view.Identity.Of(pipe.From), view.Identity.Of(pipe.To));
            Around(from).Add((to, id));
            Around(to).Add((from, id));
        }

        Masters = [.. view.Controllers.Values.Select(c => c.Master).OfType<string>().Select(view.Identity.Of).Where(view.Valves.ContainsKey)];
        Pieces = [.. FindPieces()];
    }

    /// <summary>Valves that are fed with every station.</summary>
    public HashSet<string> Masters { get; }

    /// <summary>The mainline, parted where it can be shut.</summary>
    public IReadOnlyList<MainPiece> Pieces { get; }

    public bool Knows(string id) => around.ContainsKey(id);

    /// <summary>Pipes and things that water comes to from a point of connection; it comes up to what is shut, and not beyond.</summary>
    public HashSet<string> Reached(Func<string, bool> isShut)
    {
        var reached = new HashSet<string>(view.WaterSupplies.Keys.Where(around.ContainsKey), StringComparer.Ordinal);
        var queue = new Queue<string>(reached);
        while (queue.TryDequeue(out var at))
        {
            foreach (var (other, pipe) in isShut(at) || IsStation(at) ? [] : around[at])
            {
                reached.Add(pipe);
                if (reached.Add(other))
                {
                    queue.Enqueue(other);
                }
            }
        }

        return reached;
    }

    /// <summary>Behind a station's valve lies its lateral.</summary>
    private bool IsStation(string id) => view.Valves.ContainsKey(id) && !Masters.Contains(id);

    private List<(string Other, string Pipe)> Around(string id)
    {
        if (!around.TryGetValue(id, out var list))
        {
            around[id] = list = [];
        }

        return list;
    }

    private IEnumerable<MainPiece> FindPieces()
    {
        var mains = Reached(_ => false);
        var left = view.Pipes.Keys.Where(mains.Contains).ToHashSet(StringComparer.Ordinal);
        foreach (var first in view.Pipes.Keys.Where(left.Contains).ToList())
        {
            if (left.Remove(first))
            {
                yield return Piece(first, left);
            }
        }
    }

    private MainPiece Piece(string first, HashSet<string> left)
    {
        var (pipes, ends, queue) = (new List<string>(), new SortedSet<string>(StringComparer.Ordinal), new Queue<string>([first]));
        while (queue.TryDequeue(out var pipe))
        {
            pipes.Add(pipe);
            foreach (var end in new[] { view.Pipes[pipe].From, view.Pipes[pipe].To }.Select(view.Identity.Of))
            {
                if (Parts(end))
                {
                    ends.Add(end);
                    continue;
                }

                foreach (var (_, next) in IsStation(end) ? [] : around[end].Where(a => left.Remove(a.Pipe)).ToList())
                {
                    queue.Enqueue(next);
                }
            }
        }

        return new MainPiece(pipes, [.. ends], pipes.Sum(LengthMetres));
    }

    /// <summary>What a piece ends at: something that can be shut, or a point of connection.</summary>
    private bool Parts(string id) => view.IsolationValves.ContainsKey(id) || Masters.Contains(id) || view.WaterSupplies.ContainsKey(id);

    /// <summary>As noted, along its route, or as the crow flies; zero where nothing tells.</summary>
    private double LengthMetres(string pipe) => PipeLengths.Metres(view, view.Pipes[pipe]) ?? 0;
}

/// <summary>A piece of mainline that nothing can shut within.</summary>
/// <param name="Ends">What it ends at, by id, in order.</param>
internal sealed record MainPiece(IReadOnlyList<string> Pipes, IReadOnlyList<string> Ends, double Metres);

/// <summary>How long a pipe is.</summary>
internal static class PipeLengths
{
    public static double? Metres(PropertyView view, PipeFact pipe) =>
        pipe.Length?.Metres
        ?? (pipe.Route.Count > 1 ? pipe.Route.Zip(pipe.Route.Skip(1)).Sum(p => p.First.DistanceMetresTo(p.Second)) : (double?)null)
        ?? (view.PositionOf(pipe.From) is { } from && view.PositionOf(pipe.To) is { } to && from.DistanceMetresTo(to) is > 0 and var metres ? metres : (double?)null);
}
