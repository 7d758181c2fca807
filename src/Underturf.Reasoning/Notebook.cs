using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Circuits;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Moves;
using Underturf.Reasoning.Telling;

namespace Underturf.Reasoning;

/// <summary>The way in: a field log and a practice book, answers out. Nothing is kept; everything is computed from the facts.</summary>
public sealed class Notebook
{
    private readonly Case matter;
    private readonly Lazy<IReadOnlyDictionary<string, Belief>> beliefs;
    private readonly Lazy<IReadOnlyList<Problem>> problems;

    private Notebook(LogDocument log, PropertyHistory history, PracticeBook book)
    {
        Log = log;
        History = history;
        Book = book;
        matter = new Case(history, book);
        beliefs = new Lazy<IReadOnlyDictionary<string, Belief>>(Believe);
        problems = new Lazy<IReadOnlyList<Problem>>(() =>
            [.. Log.Problems, .. References.Problems(History), .. matter.Problems, .. BookWords.Problems(History, Book), .. Contradictions.Notices(matter)]);
    }

    /// <summary>Version of the engine, stamped on every answer and paper.</summary>
    public static string Engine { get; } = typeof(Notebook).Assembly.GetName().Version!.ToString(3);

    public LogDocument Log { get; }

    public PropertyHistory History { get; }

    public PracticeBook Book { get; }

    /// <summary>What is wrong with the log, with references to nowhere, and with notes that belief cannot use.</summary>
    public IReadOnlyList<Problem> Problems => problems.Value;

    public static Notebook Open(ReadOnlyMemory<byte> log, PracticeBook book) => Open(LogDocument.Read(log), book);

    public static Notebook Open(LogDocument log, PracticeBook book) => new(log, PropertyHistory.Fold(log.Standing), book);

    public static Answers Answer(ReadOnlyMemory<byte> log, PracticeBook book) => Open(log, book).Answer();

    /// <summary>Every open question with its explanations and moves, and all moves together.</summary>
    public Answers Answer()
    {
        var (finder, writer) = (new SubjectFinder(matter), new QuestionWriter(matter));
        var questions = beliefs.Value
            .SelectMany(b => finder.Find(b.Key, b.Value))
            .Select(subject => (Subject: subject, Found: new MoveFinder(matter, subject).Find()))
            .Select(s => writer.Write(s.Subject, s.Found.Moves, s.Found.Settled))
            .ToList();
        questions.AddRange(writer.Contradicted(questions, beliefs.Value));
        var moves = questions.SelectMany(q => q.Moves).Where(m => m.Worth > m.Minutes).OrderByDescending(m => m.Worth - m.Minutes).ThenBy(m => m.Question, StringComparer.Ordinal).ToList();
        return new Answers(Engine, Book.Version, [.. questions, .. matter.Unexplained.Select(writer.Unexplained)], moves);
    }

    /// <summary>Every reading and run beside what the property as noted predicts for it, nothing broken.</summary>
    public IReadOnlyList<ReadingLine> Readings() => [.. matter.Evidence.Index()
        .Where(e => e.Item is not LookEvidence)
        .GroupBy(e => e.Item.Stations[0])
        .SelectMany(Lines)
        .OrderBy(l => l.Index)
        .Select(l => l.Line)];

    /// <summary>What stations of one controller do when they are on together, nothing broken.</summary>
    /// <param name="stations">Labels or ids.</param>
    public Outcome<CircuitAnswer> Circuit(IReadOnlyList<string> stations) => new CircuitWriter(matter, c => beliefs.Value[c].Posterior).Write(stations);

    private IEnumerable<(int Index, ReadingLine Line)> Lines(IGrouping<string, (int Index, Evidence Item)> notes)
    {
        var outlook = beliefs.Value[matter.Paths[notes.Key].Controller].OutlookOf(notes.Key);
        return notes.Select(n => (n.Index, ReadingLine.Of(matter, n.Item, outlook)));
    }

    /// <summary>A controller that stations name counts, whether or not anybody has noted the controller itself.</summary>
    private Dictionary<string, Belief> Believe() => matter.Paths.Values
        .Select(p => p.Controller)
        .Distinct()
        .Order(StringComparer.Ordinal)
        .ToDictionary(c => c, c => BeliefEngine.Of(matter, c), StringComparer.Ordinal);
}
