using Underturf.Property.Practice;

namespace Underturf.Simulation.Trials;

/// <summary>How a trial ended.</summary>
public enum TrialEnd
{
    /// <summary>No question is open.</summary>
    NothingOpen,

    /// <summary>Questions are open, and no move is worth its minutes.</summary>
    NothingWorthwhile,

    /// <summary>As many moves as a trial may have.</summary>
    Limit,
}

/// <summary>What one technician did in one made-up property.</summary>
/// <param name="Policy">How he chose.</param>
/// <param name="Steps">In order.</param>
/// <param name="AskedAbout">How many faults showed in a run or in the sweep of a station asked about at the start.</param>
/// <param name="LeftOpen">How many of these were never mended.</param>
/// <param name="Statements">What the notebook said of each question when it was acted on, or at the end.</param>
public sealed record TrialResult(
    ulong Seed,
    string Policy,
    TrialEnd End,
    IReadOnlyList<TrialStep> Steps,
    int AskedAbout,
    int LeftOpen,
    IReadOnlyList<ScoredStatement> Statements)
{
    /// <summary>What was really wrong at the start, and what still is.</summary>
    public required IReadOnlyList<TrueFault> Truth { get; init; }

    public required IReadOnlyList<TrueFault> Left { get; init; }

    /// <summary>Questions open at the end: the symptom and what is held likeliest.</summary>
    public required IReadOnlyList<string> StillOpen { get; init; }

    public int WrongRepairs => Steps.Count(s => s.Deed == TrialDeed.WrongRepair);

    public int Moves => Steps.Count(s => s.Deed == TrialDeed.Move);

    public double WalkMinutes => Steps.Sum(s => s.WalkMinutes);

    /// <summary>Of readings, runs and looks, those that prove a repair counted, walking not.</summary>
    public double MoveMinutes => Steps.Where(s => s.Deed is TrialDeed.Move or TrialDeed.Proof).Sum(s => s.Minutes);

    /// <summary>Of repairs, wrong ones counted, walking not.</summary>
    public double RepairMinutes => Steps.Where(s => s.Deed is TrialDeed.Repair or TrialDeed.WrongRepair).Sum(s => s.Minutes);

    /// <summary>All minutes worked.</summary>
    public double WorkedMinutes => Steps.Sum(s => s.WalkMinutes + s.Minutes);

    /// <summary>What the choice of moves can change: the loss without the repairs that were right and without proving repairs.</summary>
    public double SearchMinutes(PracticeBook book) => LossMinutes(book) - Steps.Where(s => s.Deed is TrialDeed.Repair or TrialDeed.Proof).Sum(s => s.Minutes);

    /// <summary>
    /// The one loss: minutes worked, and the cost of a wrong repair for each repair that mended nothing and for each fault that somebody
    /// complained of and that is still there: it will be a second trip.
    /// </summary>
    public double LossMinutes(PracticeBook book) => WorkedMinutes + (book.Loss.WrongRepairMinutes * (WrongRepairs + LeftOpen));
}
