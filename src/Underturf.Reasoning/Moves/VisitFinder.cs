namespace Underturf.Reasoning.Moves;

/// <summary>
/// Puts all open questions together: what one place can tell about several of them is one visit with one walk, and a look that serves several costs its minutes once.
/// Questions are independent given belief, so what they save adds up. A question joins a visit where that is no worse for it, the walk being paid, than what it would do by itself.
/// </summary>
/// <param name="most">Visits at most.</param>
/// <param name="minutes">What takes longer is cut to its first steps, or left out.</param>
internal sealed class VisitFinder(IReadOnlyList<SubjectPlan> subjects, int most, double minutes)
{
    /// <summary>Gains this close are equal but for rounding.</summary>
    private const double Rounding = 1e-9;

    private readonly List<(SubjectPlan Subject, double Best)> open = [.. subjects.Where(s => s.Settled is null).Select(s => (s, s.BestGain(minutes)))];

    /// <summary>Visits worth their minutes, and the repairs of all that is settled; the greatest gain first.</summary>
    public IReadOnlyList<Visit> Find()
    {
        var first = open.SelectMany(s => s.Subject.Options.Select(o => o.Candidate.Place)).Distinct()
            .Select(At)
            .OfType<Choice>()
            .Where(c => c.Gain > 0)
            .OrderByDescending(c => c.Gain)
            .Take(most);
        var visits = first.Select(Fitting).OfType<Visit>().Where(v => v.Gain > 0);
        return [.. visits.Concat(subjects.Where(s => s.Settled is not null).Select(Repair)).Where(v => v.Minutes <= minutes)
            .OrderByDescending(v => v.Gain)
            .ThenBy(v => v.Leading.Subject.Id, StringComparer.Ordinal)];
    }

    /// <summary>The same without visits that only serve what a better one serves too.</summary>
    public IReadOnlyList<Visit> Foremost()
    {
        var served = new HashSet<SubjectPlan>();
        return [.. Find().Where(v => v.Worths.Keys.Where(served.Add).ToList() is not [])];
    }

    public static Visit Repair(SubjectPlan subject)
    {
        var remedy = subject.Settled!;
        var worth = subject.WrongMinutes * subject.Cure(remedy);
        return new Visit(remedy.Place!, [subject.Repairs.Step(remedy)], new Dictionary<SubjectPlan, double> { [subject] = worth }, subject.Walk(remedy.Place!), remedy);
    }

    /// <summary>The best first step for each subject at a place, alone or with one that serves several.</summary>
    private Choice? At(string place)
    {
        var here = open
            .Select(s => (s.Subject, s.Best, Options: s.Subject.Options.Where(o => o.Candidate.Place == place && o.Minutes <= minutes).ToList()))
            .Where(s => s.Options.Count > 0)
            .ToList();
        return here.SelectMany(s => s.Options).GroupBy(o => o.Candidate.Key).Where(g => g.Count() > 1).Select(g => (string?)g.Key).Prepend(null)
            .Select(shared => Chosen(here, shared))
            .OfType<Choice>()
            .MaxBy(c => c.Margin);
    }

    private static Choice? Chosen(List<(SubjectPlan Subject, double Best, List<SubjectPlan.Option> Options)> here, string? shared)
    {
        var joining = here
            .Select(s => (s.Subject, s.Best, Option: s.Options.MaxBy(o => Saves(o, shared))))
            .Where(s => Saves(s.Option, shared) >= s.Best - Rounding)
            .ToList();
        if (joining.Count == 0)
        {
            return null;
        }

        var cost = joining.Select(s => s.Option.Candidate).FirstOrDefault(c => c.Key == shared)?.Step.Minutes ?? 0;
        var saves = joining.Sum(s => Saves(s.Option, shared)) - cost;
        return new Choice([.. joining.Select(s => (s.Subject, s.Option.Number))], saves - joining.Min(s => s.Option.WalkMinutes), saves - joining.Sum(s => s.Best));
    }

    /// <summary>For somebody who is there; a shared step's own minutes are taken off once for all.</summary>
    private static double Saves(SubjectPlan.Option option, string? shared) => option.Candidate.Key == shared ? option.Worth : option.GainThere;

    /// <summary>With what is done next anyway, or without it where that would take too long.</summary>
    private Visit? Fitting(Choice choice) => Make(choice, null) is var whole && whole.Minutes <= minutes ? whole
        : Make(choice, 1) is var single && single.Minutes <= minutes ? single
        : null;

    private static Visit Make(Choice choice, int? mostSteps)
    {
        var batches = choice.Firsts.Select(f => (f.Subject, Batch: mostSteps is { } m ? Batch.Of(f.Subject, f.First, m) : Batch.Of(f.Subject, f.First))).ToList();
        var steps = batches.SelectMany(b => b.Batch.Moves.Select(m => b.Subject.Candidates[m])).DistinctBy(c => c.Key).ToList();
        var worths = batches.ToDictionary(b => b.Subject, b => b.Batch.Worth);
        return new Visit(steps[0].Place, [.. steps.Select(s => s.Step)], worths, batches.Min(b => b.Subject.Walk(steps[0].Place)));
    }

    /// <summary>First steps at one place.</summary>
    /// <param name="Gain">What plans that begin with them save, the walk taken off once.</param>
    /// <param name="Margin">What they save more than the subjects' own best plans, the walk paid.</param>
    private sealed record Choice(IReadOnlyList<(SubjectPlan Subject, int First)> Firsts, double Gain, double Margin);
}
