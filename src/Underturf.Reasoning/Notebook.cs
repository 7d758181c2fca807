using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Circuits;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Identification;
using Underturf.Reasoning.Location;
using Underturf.Reasoning.Moves;
using Underturf.Reasoning.Sharing;
using Underturf.Reasoning.Telling;
using Underturf.Reasoning.Translation;
using Underturf.Reasoning.Water;

namespace Underturf.Reasoning;

/// <summary>The way in: a field log and a practice book, answers out. Nothing is kept; everything is computed from the facts.</summary>
public sealed partial class Notebook
{
    /// <summary>Shares of an answer that are done when belief stands, when the moves are planned and when all is in words.</summary>
    private const double Believed = 0.8;

    private const double Planned = 0.9;
    private const double Written = 0.97;

    private readonly Case matter;
    private readonly WaterCase water;
    private readonly Lazy<IReadOnlyList<Problem>> problems;

    /// <summary>The benches on which circuits are worked out are lent to one asker at a time.</summary>
    private readonly Lock asking = new();

    private readonly LocationMemory memory;
    private Lazy<IReadOnlyDictionary<string, Belief>> beliefs;

    private Notebook(LogDocument log, PropertyHistory history, PracticeBook book, Notebook? earlier)
    {
        memory = new LocationMemory(earlier?.memory);
        Log = log;
        History = history;
        Book = book;
        water = new WaterCase(history, book);
        matter = new Case(history, book, wires => WiringWater.Messages(water, wires));
        beliefs = new Lazy<IReadOnlyDictionary<string, Belief>>(Believe);
        problems = new Lazy<IReadOnlyList<Problem>>(() =>
            [.. Log.Problems, .. References.Problems(History), .. matter.Problems, .. BookWords.Problems(History, Book), .. TouchFinder.AllProblems(matter), .. ResistorProblems.All(matter), .. new LocationProblems(history, matter.Tied.View, book).All(), .. water.Problems, .. Contradictions.Notices(matter), .. Tied.Problems]);
    }

    /// <summary>Version of the engine, stamped on every answer and paper.</summary>
    public static string Engine { get; } = typeof(Notebook).Assembly.GetName().Version!.ToString(3);

    public LogDocument Log { get; }

    public PropertyHistory History { get; }

    public PracticeBook Book { get; }

    /// <summary>Where taped distances put things.</summary>
    public TiedPlaces Tied => matter.Tied;

    /// <summary>What is wrong with the log, with references to nowhere, and with notes that belief cannot use.</summary>
    public IReadOnlyList<Problem> Problems => problems.Value;

    /// <param name="earlier">The notebook of the same log before its newest notes: what it worked out is taken up where it still holds, and is not to be asked at the same time.</param>
    public static Notebook Open(ReadOnlyMemory<byte> log, PracticeBook book, Notebook? earlier = null) => Open(LogDocument.Read(log), book, earlier);

    /// <inheritdoc cref="Open(ReadOnlyMemory{byte}, PracticeBook, Notebook?)"/>
    public static Notebook Open(LogDocument log, PracticeBook book, Notebook? earlier = null) => new(log, PropertyHistory.Fold(log.Standing), book, earlier);

    public static Answers Answer(ReadOnlyMemory<byte> log, PracticeBook book) => Open(log, book).Answer();

    /// <summary>Every open question with its explanations and moves, and all moves together, from the controller and with all the time in the world.</summary>
    /// <exception cref="OperationCanceledException">Whoever waited has given it up.</exception>
    public Answers Answer(Waiting? waiting = null) => AnswerFrom(null, null, waiting);

    /// <summary>The same from where one is, within the time that one has.</summary>
    /// <exception cref="OperationCanceledException">Whoever waited has given it up.</exception>
    public Outcome<Answers> Answer(Standpoint standpoint, Waiting? waiting = null)
    {
        var stand = MoveFinder.Stand(matter, standpoint);
        return stand.Succeeded ? AnswerFrom(stand.Value, standpoint.Minutes, waiting) : stand.Problem!;
    }

    private Answers AnswerFrom(string? at, double? minutes, Waiting? waiting)
    {
        using var turn = asking.EnterScope();
        try
        {
            matter.Pace.Begin(waiting ?? new Waiting());
            var answers = AnswerFrom(at, minutes);
            matter.Pace.End();
            return answers;
        }
        catch (OperationCanceledException) when (!beliefs.IsValueCreated)
        {
            // What was given up keeps its end for good: the next answer begins anew.
            beliefs = new Lazy<IReadOnlyDictionary<string, Belief>>(Believe);
            throw;
        }
        finally
        {
            matter.Pace.Rest();
        }
    }

    private Answers AnswerFrom(string? at, double? minutes)
    {
        var (finder, writer, pace) = (new SubjectFinder(matter), new QuestionWriter(matter), matter.Pace);
        var subjects = beliefs.Value.SelectMany(b => finder.Find(b.Key, b.Value)).ToList();
        pace.Until(Planned);
        var planned = new MoveFinder(matter, pace.Over(subjects), at, minutes);
        pace.Until(Written);
        var questions = pace.Over(planned.Plans).Select(p => writer.Write(p.Subject, planned.Of(p), p.Settled is not null)).ToList();
        questions.AddRange(writer.Contradicted(questions, beliefs.Value));
        var about = water.IsNoted ? WaterQuestions.Of(Wet(), new Walks(matter)) : [];
        var answers = new Answers(Engine, Book.Version, [.. questions, .. about, .. matter.Unexplained.Select(writer.Unexplained)], Together(questions, [.. Worthwhile(planned.Together(), about, minutes)]))
        {
            Naming = new NamingMoveFinder(matter).Find(questions, at, minutes),
            IsRound = minutes is not null,
        };
        return minutes is null || answers.Together.Count > 0 ? answers : answers with { Nearest = Nearest(planned, about, questions, at) };
    }

    private Move? Nearest(MoveFinder planned, IReadOnlyList<OpenQuestion> about, IReadOnlyList<OpenQuestion> questions, string? at) =>
        Worthwhile(planned.Nearest() is { } move ? [move] : [], about, null)
            .Concat(new NamingMoveFinder(matter).Find(questions, at, null).Select(n => n.AsMove()))
            .MinBy(m => m.Minutes);

    /// <summary>The best move of each question about water takes its place among the others.</summary>
    private static IEnumerable<Move> Worthwhile(IReadOnlyList<Move> moves, IReadOnlyList<OpenQuestion> about, double? minutes) =>
        Ranked.With(moves, about.SelectMany(q => q.Moves.Take(1)).Where(m => m.Worth > m.Minutes && m.Minutes <= (minutes ?? double.PositiveInfinity)));

    /// <summary>What has to be taken again comes first; nothing else about the same question is worth a walk before.</summary>
    private static IReadOnlyList<Move> Together(IReadOnlyList<OpenQuestion> questions, IReadOnlyList<Move> moves)
    {
        var doubted = questions.Where(q => q.Repeats.Count > 0).ToList();
        return [.. doubted.SelectMany(q => q.Moves.Take(q.Repeats.Count)), .. moves.Where(m => doubted.All(q => q.Id != m.Question))];
    }

    /// <summary>Every reading and run beside what the property as noted predicts for it, nothing broken.</summary>
    public IReadOnlyList<ReadingLine> Readings()
    {
        using var turn = asking.EnterScope();
        return [.. matter.Evidence.Index()
            .Where(e => e.Item is not (LookEvidence or WaterEvidence))
            .GroupBy(e => e.Item.Stations[0])
            .SelectMany(Lines)
            .OrderBy(l => l.Index)
            .Select(l => l.Line)];
    }

    /// <summary>What stations of one controller do when they are on together, nothing broken.</summary>
    /// <param name="stations">Labels or ids.</param>
    public Outcome<CircuitAnswer> Circuit(IReadOnlyList<string> stations)
    {
        using var turn = asking.EnterScope();
        var circuit = new CircuitWriter(matter, c => beliefs.Value[c].Posterior).Write(stations);
        return circuit.Succeeded ? new PlaceChance(Locating(null), matter.Tied.View, Book.Locating.StopMetres).In(circuit.Value) : circuit;
    }

    /// <summary>What stations of one controller would do together if their wires lay so, nothing broken.</summary>
    public Outcome<CircuitAnswer> Foresee(IReadOnlyList<StationPath> paths)
    {
        using var turn = asking.EnterScope();
        return new CircuitWriter(matter, c => beliefs.Value[c].Posterior).Foresee(paths);
    }

    /// <summary>The wires of each station as the notes have them, by id.</summary>
    public IReadOnlyDictionary<string, StationPath> Paths => matter.Paths;

    /// <summary>Stations that run more than one valve by one conductor.</summary>
    public IReadOnlyList<SharedStation> Shared()
    {
        using var turn = asking.EnterScope();
        return [.. new SharedStationFinder(matter).Find(beliefs.Value)];
    }

    /// <summary>Conductors that carry nothing, with what is proven of each.</summary>
    public IReadOnlyList<SpareWire> Spares()
    {
        using var turn = asking.EnterScope();
        return new SpareWires(matter).Find();
    }

    /// <summary>Id of the place that somebody names.</summary>
    /// <param name="name">Label or id.</param>
    public Outcome<string> Place(string name) => new Walks(matter).Find(name);

    /// <summary>Stations that have no water because something stands shut by hand, each with what that is.</summary>
    public IReadOnlyDictionary<string, string> DryNow() => new ShutOff(water).Find();

    /// <summary>Minutes of walking from one place to another.</summary>
    public double WalkMinutes(string from, string to) => new Walks(matter).Minutes(from, to);

    /// <summary>Which wire each conductor end of a place is, and what to touch next.</summary>
    /// <param name="place">Label or id.</param>
    public Outcome<NamingAnswer> Name(string place, NamingCrew crew)
    {
        using var turn = asking.EnterScope();
        return new NamingWriter(matter).Write(place, crew);
    }

    /// <summary>What lies hidden, without a word of where.</summary>
    /// <param name="answers">What the diagnosis says, so that the faults that it puts into the ground are among it.</param>
    public IReadOnlyList<HiddenName> Hidden(Answers? answers = null) => HiddenNames.Of(History, new SoughtFinder(History, matter.Tied.View, Book, answers?.Questions ?? []).Find());

    /// <summary>Where hidden things lie, and where to look first.</summary>
    /// <param name="thing">Id or name of one, or of its station; all where nothing is said.</param>
    /// <param name="at">Where one is: label or id of a place; the controller where nothing is said.</param>
    /// <param name="answers">What the diagnosis says, so that the faults that it puts into the ground are looked for too.</param>
    public Outcome<LocationAnswer> Locate(string? thing = null, string? at = null, Answers? answers = null)
    {
        using var turn = asking.EnterScope();
        var stand = at is null ? null : (Outcome<string>?)new Walks(matter).Find(at);
        return stand is { Succeeded: false } ? stand.Value.Problem! : Locating(answers).Write(thing, stand is { } place ? matter.Tied.View.PositionOf(place.Value) : null);
    }

    /// <summary>The same from a point on the ground.</summary>
    public Outcome<LocationAnswer> Locate(string? thing, Position from, Answers? answers = null)
    {
        using var turn = asking.EnterScope();
        return Locating(answers).Write(thing, from);
    }

    private LocationWriter Locating(Answers? answers) => new(History, matter.Tied.View, Book, answers?.Questions ?? [], memory);

    /// <summary>Everything that is tied.</summary>
    public TieAnswer Ties() => new(Engine, Book.Version, Tied.All);

    /// <summary>One thing with its ties, and the marks that are best to tape it from.</summary>
    /// <param name="thing">Label or id of a controller, box or valve.</param>
    public Outcome<TieAnswer> Tie(string thing)
    {
        var found = new Walks(matter).Find(thing);
        return found.Succeeded ? new TieAnswer(Engine, Book.Version, [Tied.Of(found.Value)]) : found.Problem!;
    }

    private IEnumerable<(int Index, ReadingLine Line)> Lines(IGrouping<string, (int Index, Evidence Item)> notes)
    {
        var outlook = beliefs.Value[matter.Paths[notes.Key].Controller].OutlookOf(notes.Key);
        return notes.Select(n => (n.Index, ReadingLine.Of(matter, n.Item, outlook)));
    }

    /// <summary>A controller that stations name counts, whether or not anybody has noted the controller itself.</summary>
    private Dictionary<string, Belief> Believe()
    {
        var controllers = matter.Paths.Values.Select(p => p.Controller).Distinct().Order(StringComparer.Ordinal).ToList();
        var answered = new Dictionary<string, Belief>(StringComparer.Ordinal);
        foreach (var controller in controllers)
        {
            matter.Pace.Until(Believed * (answered.Count + 1) / controllers.Count);
            answered[controller] = BeliefEngine.Of(matter, controller);
        }

        return answered;
    }
}
