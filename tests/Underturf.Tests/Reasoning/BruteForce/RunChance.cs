using Underturf.Numerics;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Tests.Reasoning.BruteForce;

/// <summary>The chance of what a run showed, written down anew from docs/models/diagnosis.md: what opens by its volts, and what was counted.</summary>
internal static class RunChance
{
    public static double Log(RunEvidence run, Suspect[] active, double volts, double spread)
    {
        var (coil, book) = (run.Book.Coil, run.Book.Run);
        var sigma = Math.Sqrt((spread * spread) + (coil.PullInSpread * coil.PullInSpread));
        var opens = Normal.Cdf((volts - coil.PullInVolts) / sigma);
        var moves = Math.Max(opens, Normal.Cdf((volts - coil.ChatterVolts) / sigma));
        var free = 1 - active.Select(s => s.Fault!.StaysShut).Append(0).Max();
        var chances = new[] { opens * free, (moves - opens) * free, 1 - (moves * free) };
        var sum = Enumerable.Range(0, 3).Sum(b => chances[b] * Told(run, b) * Counted(run, active, b));
        var swapped = active.Any(s => s.Fault!.Swaps);
        var elsewhere = run.AtOwnPlace is not { } own ? 1
            : own ? 1 - (swapped ? book.WrongPlaceNoticed : book.WrongPlaceImagined)
            : swapped ? book.WrongPlaceNoticed : book.WrongPlaceImagined;
        return Math.Log(sum * elsewhere * run.Elsewhere.Chance(run.Stations[0], active, book));
    }

    private static double Told(RunEvidence run, int behaved) => run.Behaved is not { } told ? 1 : (int)told == behaved ? 1 - run.Book.Run.BehaviourMistaken : run.Book.Run.BehaviourMistaken / 2;

    private static double Counted(RunEvidence run, Suspect[] active, int behaved)
    {
        if (run.Places is not { } seen)
        {
            return 1;
        }

        var (book, usual) = (run.Book.Run, Math.Max(1, run.Benches.Path(run.Stations[0]).Valves.Count));
        var more = active.Where(s => s.Fault!.ExtraPlaces && s.Passes is Passes.Both or Passes.All).Sum(s => Math.Max(1, s.MoreCoils));
        var (sure, doubtful) = (behaved == 0 ? usual : 0, behaved == 1 ? usual + more : more);
        return ((1 - book.PlaceImagined) * Binomial(doubtful, seen - sure, book.PlaceNoticed))
            + (book.PlaceImagined * Binomial(doubtful, seen - sure - 1, book.PlaceNoticed))
            + (book.PlaceImagined * book.PlaceImagined / 4);
    }

    private static double Binomial(int n, int k, double p) =>
        k < 0 || k > n ? 0 : Enumerable.Range(1, k).Aggregate(1.0, (ways, i) => ways * (n - k + i) / i) * Math.Pow(p, k) * Math.Pow(1 - p, n - k);
}
