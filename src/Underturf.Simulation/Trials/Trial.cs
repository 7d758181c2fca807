using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Simulation.Trials;

/// <summary>
/// A virtual technician works through a made-up property: asks the notebook, does what the policy takes of its offers, notes what is seen, asks
/// again; repairs when enough is known, proves the repair, and ends where nothing is open or nothing is worth its minutes.
/// </summary>
public sealed class Trial
{
    /// <summary>Moves and repairs that a trial may have.</summary>
    public const int MostSteps = 80;

    /// <summary>Candidates of a question that the policies choose among, those of most worth: all of them but in the largest properties.</summary>
    private const int Candidates = 60;

    /// <summary>The notebook is asked for a round within a working day: in walking order.</summary>
    private const double DayMinutes = 480;

    /// <summary>Of more stations than these one is run after a repair of what they share.</summary>
    private const int FewStations = 2;

    private readonly ulong seed;
    private readonly TrialPolicy policy;
    private readonly TrialSite site;
    private readonly Walk walk;
    private readonly PracticeBook listing;
    private readonly ScoreSheet sheet;
    private readonly List<TrialStep> steps = [];
    private Answers answers;

    private Trial(World world, ulong seed, TrialPolicy policy, LimitTable? limits, double tailShare)
    {
        (this.seed, this.policy) = (seed, policy);
        site = new TrialSite(world, tailShare);
        sheet = new ScoreSheet(site, limits);
        walk = new Walk(site.View, site.Book.Walk, site.Truth.Paths[0].Controller);

        // The candidates are to be seen, not only those that a page has room for.
        listing = site.Book with { Questions = site.Book.Questions with { ListMoves = Candidates } };
        answers = Ask();
    }

    /// <summary>The names of the ways to choose: the notebook's own first, then the rules of thumb.</summary>
    public static IReadOnlyList<string> PolicyNames { get; } = [.. Policies.All.Select(p => p.Name)];

    /// <param name="world">With a first visit only.</param>
    /// <param name="seed">Of the world, to name it by.</param>
    /// <param name="policy">One of <see cref="PolicyNames"/>.</param>
    /// <param name="limits">To score beside; nothing where scores are not asked for.</param>
    /// <param name="shape">That the world was made with.</param>
    public static TrialResult Run(World world, ulong seed, string policy, WorldShape shape, LimitTable? limits = null) =>
        new Trial(world, seed, Policies.All.First(p => p.Name == policy), limits, shape.TailShare).Go();

    private TrialResult Go()
    {
        var asked = answers.Questions.Select(sheet.Reader.Stations).ToList();
        IReadOnlyList<string> concerned = [.. asked.SelectMany(s => s).Distinct()];
        var complained = site.Truth.FaultsOf(concerned).Where(f => site.Shows(f, concerned)).ToList();
        var (truth, end) = (site.Truth.Faults, TrialEnd.Limit);
        while (steps.Count < MostSteps)
        {
            if (policy.Choose(new TrialScene(answers, site.View, site.Paths, site.Book, walk.MinutesTo)) is not { } move)
            {
                end = answers.Questions.Any(q => q.Stations.Count > 0) ? TrialEnd.NothingWorthwhile : TrialEnd.NothingOpen;
                break;
            }

            Do(move);
        }

        foreach (var question in answers.Questions)
        {
            sheet.Score(question);
        }

        sheet.Closed(asked);
        return new TrialResult(seed, policy.Name, end, steps, complained.Count, complained.Count(site.Truth.Faults.Contains), Lines(asked))
        {
            Truth = truth,
            Left = site.Truth.Faults,
            StillOpen = [.. answers.Questions.Select(q => $"{q.Symptom}: {q.Explanations[0].Probability:P0} {q.Explanations[0].Summary}{(q.Settled ? ", settled" : string.Empty)}")],
        };
    }

    private IReadOnlyList<ScoredStatement> Lines(List<IReadOnlyList<string>> asked) =>
        [.. sheet.Lines.Select(l => l with { AtStart = asked.Exists(a => a.Intersect(l.Stations).Any()) })];

    private Answers Ask() => Notebook.Open(site.Log, listing).Answer(new Standpoint(walk.At, DayMinutes)).Value;

    /// <summary>The first step of a move; what is seen then is told to the notebook before the next one is taken.</summary>
    private void Do(Move move)
    {
        var step = move.Steps[0];
        var before = Asked(step.Question);
        var isRepair = step.Asks is WorkFact;
        if (isRepair)
        {
            sheet.Score(before);
        }

        Note(new TrialStep(step.Action, move.Where, walk.Go(move.Place), step.Minutes, string.Empty), step.Asks);
        if (isRepair)
        {
            Prove(sheet.Reader.Stations(before));
        }

        answers = Ask();
        var still = answers.Questions.FirstOrDefault(q => q.Id == before.Id) ?? answers.Questions.FirstOrDefault(q => q.Stations.Intersect(before.Stations).Any());
        steps[^1] = steps[^1] with { Top = still?.Explanations[0].Summary, TopProbability = still?.Explanations[0].Probability ?? 0 };
    }

    private OpenQuestion Asked(string id) => answers.Questions.First(q => q.Id == id);

    private void Note(TrialStep step, Fact asks) => steps.Add(asks is WorkFact work
        ? step with { Deed = site.Work(work) ? TrialDeed.Repair : TrialDeed.WrongRepair }
        : step with { Seen = site.See(asks) });

    /// <summary>What was repaired is run, and read again as it was read at the controller before.</summary>
    private void Prove(IReadOnlyList<string> stations)
    {
        var (seen, minutes) = (new List<string>(), 0.0);
        foreach (var station in stations)
        {
            foreach (var how in site.FirstRead(station).Keys.Take(stations.Count > FewStations ? 1 : int.MaxValue).ToList())
            {
                seen.Add($"{how} {site.See(new ReadingFact { How = how, Stations = [station], Value = Shown.OverRange })}");
                minutes += site.Book.Probe(how)!.Minutes;
            }
        }

        foreach (var station in stations.Take(stations.Count > FewStations ? 1 : FewStations))
        {
            seen.Add(site.See(new TestFact { Station = station }));
            minutes += site.Book.Run.Minutes;
        }

        var controller = site.Paths[stations[0]].Controller;
        steps.Add(new TrialStep("run it and read it again", site.View.Name(controller), walk.Go(controller), minutes, string.Join("; ", seen)) { Deed = TrialDeed.Proof });
    }
}
