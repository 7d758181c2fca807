using Underturf.Planning.Choosing;

namespace Underturf.Planning.Rework;

/// <summary>A need with what was chosen for it.</summary>
/// <param name="Terminal">The terminal that it gets; nothing where it stays.</param>
internal sealed record Chosen(Need Need, Remedy Remedy, IReadOnlyList<Remedy> All, int? Terminal);

/// <param name="Bound">No choice is expected to cost less.</param>
internal sealed record Matched(IReadOnlyList<Chosen> Chosen, decimal Bound);

/// <summary>All needs together: one remedy each, no conductor twice, no more terminals than are free, least expected price, then fewest numbers that move.</summary>
internal static class Matching
{
    /// <summary>A number that moves weighs less than a cent, however many move.</summary>
    private const long CentWeight = 1000;

    /// <summary>Dearer than this, one is as good as another.</summary>
    private const decimal Most = 1e10m;

    public static Matched Choose(Site site, IReadOnlyList<(Need Need, IReadOnlyList<Remedy> Remedies)> needs, IChoiceSolver solver)
    {
        var things = new Things(site);
        var open = needs.Select(n => n.Remedies.Where(r => r.Told.IsPossible).ToList()).ToList();
        var program = new ChoiceProgram([.. open.Zip(needs, (remedies, n) => (IReadOnlyList<ChoiceOption>)[.. remedies.Select(r => new ChoiceOption(Cost(r), things.Of(n.Need, r)))])], things.Stock);
        var result = solver.Solve(program);
        var free = site.View.Controllers.Keys.ToDictionary(c => c, c => new Queue<int>(site.Free(c)), StringComparer.Ordinal);
        var chosen = needs.Select((n, i) =>
        {
            var remedy = open[i][result.Chosen[i]];
            return new Chosen(n.Need, remedy, n.Remedies, remedy.TakesTerminal ? free[n.Need.Controller].Dequeue() : remedy.Terminal);
        });
        return new Matched([.. chosen], result.Bound / CentWeight / 100m);
    }

    private static long Cost(Remedy remedy) => (decimal.ToInt64(Math.Min(remedy.Told.Expected, Most) * 100) * CentWeight) + (remedy.Told.Kind == RemedyKind.Keep ? 0 : 1);

    /// <summary>Numbers for conductors, and for the free terminals of each controller.</summary>
    private sealed class Things
    {
        private readonly List<string> wires;
        private readonly List<string> controllers;

        public Things(Site site)
        {
            wires = [.. site.Spares.Select(s => s.Wire).Concat(site.Abandoned).Distinct()];
            controllers = [.. site.View.Controllers.Keys.Concat(site.Shared.Select(s => s.Path.Controller)).Distinct()];
            Stock = [.. wires.Select(_ => 1), .. controllers.Select(c => site.Free(c).Count)];
        }

        public IReadOnlyList<int> Stock { get; }

        public IReadOnlyList<int> Of(Need need, Remedy remedy)
        {
            IEnumerable<int> used = new[] { remedy.Wire, remedy.Second }.OfType<string>().Select(w => wires.IndexOf(w));
            return remedy.TakesTerminal ? [.. used, wires.Count + controllers.IndexOf(need.Controller)] : [.. used];
        }
    }
}
