using System.Text.Json.Serialization;

namespace Underturf.Reasoning;

/// <summary>What the log lets one say now: every open question with what would explain it and what to do next.</summary>
/// <param name="Engine">Version of the program.</param>
/// <param name="Book">Version of the practice book.</param>
/// <param name="Questions">Most pressing first.</param>
/// <param name="Moves">The moves of all questions together that are worth their minutes, best first.</param>
public sealed record Answers(string Engine, string Book, IReadOnlyList<OpenQuestion> Questions, IReadOnlyList<Move> Moves)
{
    /// <summary>Places whose conductor ends are worth naming, best first.</summary>
    public IReadOnlyList<NamingMove> Naming { get; init; } = [];

    /// <summary>Where nothing that is worth its minutes fits into those that one has: of the rest what takes fewest.</summary>
    [JsonIgnore]
    public Move? Nearest { get; init; }

    /// <summary>True where the moves are a set that fits the time, in walking order: naming comes after it.</summary>
    [JsonIgnore]
    public bool IsRound { get; init; }

    /// <summary>The moves with the naming of ends at its place among them, by what each saves beyond its own minutes; what has to be taken again comes first all the same.</summary>
    [JsonIgnore]
    public IReadOnlyList<Move> Together
    {
        get
        {
            var first = IsRound ? Moves.Count : Questions.Sum(q => Math.Min(q.Repeats.Count, q.Moves.Count));
            return [.. Moves.Take(first), .. Ranked.With([.. Moves.Skip(first)], Naming.Select(n => n.AsMove()))];
        }
    }
}

/// <summary>A symptom to explain.</summary>
/// <param name="Id">Stable as long as the symptom has the same subject.</param>
/// <param name="Symptom">What was seen, in a technician's words.</param>
/// <param name="Stations">Labels of the stations concerned.</param>
/// <param name="Explanations">Most probable first; probabilities sum to one.</param>
/// <param name="Valves">How many valves the station runs, as a distribution; empty where that is not asked.</param>
/// <param name="Moves">Best first.</param>
/// <param name="Settled">True where no affordable move lowers the expected loss: enough is known to repair.</param>
public sealed record OpenQuestion(
    string Id,
    string Symptom,
    IReadOnlyList<string> Stations,
    IReadOnlyList<Explanation> Explanations,
    IReadOnlyList<CountProbability> Valves,
    IReadOnlyList<Move> Moves,
    bool Settled)
{
    /// <summary>What runs away meanwhile; nothing where no water does, or nobody knows.</summary>
    public Water.WaterLoss? WaterLost { get; init; }

    /// <summary>Notes that cannot all be right: to be taken again before anything is repaired.</summary>
    public IReadOnlyList<Repeat> Repeats { get; init; } = [];

    /// <summary>What would change the answer; nothing where no move can.</summary>
    public Overturn? Overturn { get; init; }

    /// <summary>True where the leading explanation is a doubt.</summary>
    public bool Unexplained => Explanations is [{ Doubt: true }, ..];
}

/// <summary>A set of faults that would produce what was seen.</summary>
/// <param name="Fault">Id of the fault in the practice book.</param>
/// <param name="Probability">Posterior probability.</param>
/// <param name="Summary">One sentence.</param>
/// <param name="Places">Where it can sit, most probable first; probabilities are of the place given this explanation.</param>
/// <param name="Evidence">Each reading that bears on it: predicted and observed.</param>
/// <param name="Repair">What would cure it.</param>
public sealed record Explanation(
    string Fault,
    double Probability,
    string Summary,
    IReadOnlyList<PlaceProbability> Places,
    IReadOnlyList<EvidenceLine> Evidence,
    string Repair)
{
    /// <summary>
    /// True where it blames a note or the limits of the model, not the property, or rests on notes that cannot all be right: the reading stays
    /// without an explanation.
    /// </summary>
    public bool Doubt { get; init; }

    /// <summary>True where it is named only because it was ruled out: without evidence of its own, and less likely than is worth a line.</summary>
    [JsonIgnore]
    public bool RuledOut => Evidence.Count == 0 && Fault != "other" && Probability < 0.005;

    /// <summary>The explanations told here as one, because no move tells them apart, the likeliest first; empty where it is one alone.</summary>
    public IReadOnlyList<AlikeExplanation> Alike { get; init; } = [];

    /// <summary>Whether it holds a fault of the practice book, by itself or as one that no move tells apart from it.</summary>
    public bool Names(string fault) => Fault.Split(" + ").Contains(fault) || Alike.Any(a => a.Fault.Split(" + ").Contains(fault));
}

/// <summary>One of several explanations that no move tells apart.</summary>
/// <param name="Fault">Id of the fault in the practice book.</param>
/// <param name="Probability">Its own share.</param>
/// <param name="Summary">One sentence.</param>
/// <param name="Repair">What would cure it.</param>
public sealed record AlikeExplanation(string Fault, double Probability, string Summary, string Repair);

/// <summary>Two notes of the same thing that cannot both be right.</summary>
/// <param name="What">What to do again: "station ohms, station 7".</param>
/// <param name="Where">Label of the place.</param>
/// <param name="Why">The two notes beside each other.</param>
/// <param name="Entries">Ids of the notes.</param>
public sealed record Repeat(string What, string Where, string Why, IReadOnlyList<string> Entries);

public sealed record CountProbability(int Count, double Probability);

/// <summary>Where it can sit.</summary>
/// <param name="Place">Label of the place.</param>
/// <param name="From">Label of the place from which the run to it comes, where it can sit anywhere on that run.</param>
public sealed record PlaceProbability(string Place, double Probability, string? From = null)
{
    /// <summary>Id of the place, or of the valve that it is; nothing where it is several things.</summary>
    [JsonIgnore]
    public string? Id { get; init; }

    /// <summary>"box 4", or "between box 1 and box 4".</summary>
    [JsonIgnore]
    public string Label => From is null ? Place : $"between {From} and {Place}";
}

/// <summary>One reading beside what the explanation predicts for it.</summary>
/// <param name="Entry">Id of the entry, "writer/seq".</param>
/// <param name="What">How it was taken and of which station.</param>
/// <param name="Weight">
/// log10 of how much likelier this reading is under the explanation than under the others together, nothing broken included, as they stood before
/// any reading of the station: positive speaks for it.
/// </param>
public sealed record EvidenceLine(string Entry, string What, string Predicted, string Observed, double Weight)
{
    /// <summary>The weight in words: "speaks strongly for".</summary>
    public string Speaks => Telling.EvidenceScale.Say(Weight);
}
