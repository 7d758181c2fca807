using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Moves.Planning;

namespace Underturf.Reasoning.Moves;

/// <summary>What to do next about one subject alone, from where one stands.</summary>
internal sealed class SubjectPlan
{
    private const int MostWorlds = 80;

    /// <summary>A repair that is more likely to fail than to cure is never the end of the search.</summary>
    private const double Likely = 0.5;

    /// <summary>
    /// A move that takes away less of the doubt than this is not proposed, unless the plan begins with it: what its plan saves comes from what follows.
    /// </summary>
    private const double LeastShare = 0.05;

    private readonly Plan plan;
    private readonly Decision decision;

    public SubjectPlan(Case owner, Subject subject, Walks walks, string? at)
    {
        Subject = subject;
        At = at ?? owner.Paths[subject.Stations[0]].Controller;
        Worlds = [.. subject.Worlds.Take(MostWorlds)];
        var total = Worlds.Sum(w => w.Probability);
        Belief = [.. Worlds.Select(w => w.Probability / total)];
        Candidates = new CandidateFinder(owner, subject, Worlds, Belief).Find();
        Repairs = new RepairList(owner, subject, Worlds);
        Remedies = Repairs.Find();
        Places = [.. Candidates.Select(c => c.Place).Concat(Remedies.Select(r => r.Place).OfType<string>()).Prepend(At).Distinct()];
        decision = new Decision(
            Belief,
            [.. Candidates.Select(c => new DecisionMove(PlaceOf(c.Place), c.Step.Minutes, c.Chances))],
            [.. Remedies.Select(r => new DecisionAct(r.Place is null ? null : PlaceOf(r.Place), r.Minutes, r.Cures))],
            [.. Places.Select(a => Places.Select(b => walks.Minutes(a, b)).ToArray())],
            owner.Book.Loss.WrongRepairMinutes,
            owner.Book.Loss.SettledRegretMinutes);
        Planner = new Planner(decision);
        plan = Planner.Next(Belief, 0, new HashSet<int>());
        Options = [.. plan.Options.Where(o => o.Move == plan.Move || o.DoubtShare >= LeastShare).Select(o => new Option(Candidates[o.Move], o.Move, Walk(Candidates[o.Move].Place), plan.ActMinutes - o.Minutes))];
    }

    public Subject Subject { get; }

    /// <summary>Id of the place where one stands.</summary>
    public string At { get; }

    public IReadOnlyList<World> Worlds { get; }

    public double[] Belief { get; }

    public IReadOnlyList<Candidate> Candidates { get; }

    public RepairList Repairs { get; }

    public IReadOnlyList<Remedy> Remedies { get; }

    /// <summary>The decision's places, by number.</summary>
    public IReadOnlyList<string> Places { get; }

    public Planner Planner { get; }

    /// <summary>Every move that tells enough, the best by its whole plan first.</summary>
    public IReadOnlyList<Option> Options { get; }

    /// <summary>What a wrong repair costs.</summary>
    public double WrongMinutes => decision.WrongMinutes;

    /// <summary>Expected minutes of acting at once.</summary>
    public double ActMinutes => plan.ActMinutes;

    /// <summary>The repair that ends it: enough is known, or nothing that could be found out is worth its minutes.</summary>
    public Remedy? Settled => Act is { Repair.Length: > 0 } act && Cure(act) > Likely && (plan.Settled || plan.Move is null) ? act : null;

    /// <summary>The most that a plan saves that begins with a move within so many minutes.</summary>
    public double BestGain(double minutes) => Options.Where(o => o.Minutes <= minutes).Select(o => o.Gain).DefaultIfEmpty().Max();

    /// <summary>Chance that a repair cures.</summary>
    public double Cure(Remedy remedy) => Belief.Where((_, w) => remedy.Cures[w]).Sum();

    public int PlaceOf(string place) => Places.Index().First(p => p.Item == place).Index;

    public double Walk(string to) => decision.WalkMinutes[0][PlaceOf(to)];

    private Remedy? Act => plan.Act is { } act ? Remedies[act] : null;

    /// <summary>A first move.</summary>
    /// <param name="Number">Among the candidates.</param>
    /// <param name="WalkMinutes">Of going there.</param>
    /// <param name="Gain">Minutes of expected loss that a plan which begins with it saves against acting at once, all that it takes taken off.</param>
    public readonly record struct Option(Candidate Candidate, int Number, double WalkMinutes, double Gain)
    {
        /// <summary>Gain for somebody who is there already.</summary>
        public double GainThere => Gain + WalkMinutes;

        /// <summary>Minutes saved, its own not taken off.</summary>
        public double Worth => GainThere + Candidate.Step.Minutes;

        /// <summary>The walk and its own.</summary>
        public double Minutes => WalkMinutes + Candidate.Step.Minutes;
    }
}
