using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Moves;

/// <summary>A repair at a place; nothing to do where both are missing.</summary>
internal readonly record struct Act(string Repair, string? Place);

/// <summary>
/// The one loss: minutes of the repair chosen, plus the cost of a wrong repair with the chance that it does not cure. Belief is a vector of
/// probabilities over the worlds given at the start.
/// </summary>
internal sealed class Loss
{
    private readonly PracticeBook book;
    private readonly bool shortfall;
    private readonly (Act Act, double Minutes, bool[] Cures)[] acts;

    public Loss(PracticeBook book, IReadOnlyList<World> worlds, bool shortfall)
    {
        this.book = book;
        this.shortfall = shortfall;
        acts = [.. worlds
            .SelectMany(w => Cure(w))
            .Distinct()
            .Select(act => (act, Minutes(act), worlds.Select(w => Cure(w).Contains(act)).ToArray()))];
    }

    /// <summary>Expected loss of the best act, in minutes.</summary>
    public double Of(ReadOnlySpan<double> belief) => Best(belief).Loss;

    /// <summary>The act of least expected loss, its loss, and its chance to cure.</summary>
    public (Act Act, double Loss, double Cure) Best(ReadOnlySpan<double> belief)
    {
        (Act Act, double Loss, double Cure) best = (new Act(string.Empty, null), book.Loss.WrongRepairMinutes, 0);
        foreach (var (act, minutes, cures) in acts)
        {
            var cure = 0.0;
            for (var i = 0; i < belief.Length; i++)
            {
                cure += cures[i] ? belief[i] : 0;
            }

            var loss = minutes + (book.Loss.WrongRepairMinutes * (1 - cure));
            if (loss < best.Loss)
            {
                best = (act, loss, cure);
            }
        }

        return best;
    }

    /// <summary>Whether a repair at its place, or leaving alone, cures a world.</summary>
    public bool Cures(Act act, World world) => Cure(world).Contains(act);

    public double Minutes(Act act) => book.Repair(act.Repair)?.Minutes ?? 0;

    /// <summary>
    /// What is right in a world: the repair of its fault, at its place where the repair has one; of any of several faults, for all have to be
    /// mended; in a sound world leaving it alone.
    /// </summary>
    private IEnumerable<Act> Cure(World world) => world.Suspects switch
    {
        [] => [new Act(shortfall ? book.AsBuilt.WeakRepair : string.Empty, null)],
        var suspects => suspects
            .Where(s => s.Fault!.Repair.Length > 0 && (s.Note is null || suspects.Count == 1))
            .Select(s => new Act(s.Fault!.Repair, book.Repair(s.Fault.Repair)!.Placed ? s.Place : null)),
    };
}
