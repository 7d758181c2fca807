using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Identification;

/// <summary>A round of touches with the note that says it.</summary>
internal sealed record NotedTouching(Observed<TouchFact> Note, Touching Touching)
{
    /// <summary>The same way on the same wires, the other lead on the same end.</summary>
    public bool IsOfTheSame(NotedTouching other) =>
        other.Touching.Way == Touching.Way && other.Touching.Lead == Touching.Lead && other.Touching.Put.SequenceEqual(Touching.Put);
}

/// <summary>Reads the notes of touches at a place; names those that cannot be used.</summary>
internal sealed class TouchFinder(Case matter, Bundle bundle)
{
    private readonly PropertyView view = matter.View;

    public List<Problem> Problems { get; } = [];

    /// <summary>What is wrong with the notes of touches at all places.</summary>
    public static IEnumerable<Problem> AllProblems(Case matter)
    {
        foreach (var place in matter.History.Facts.Touches.Select(t => matter.View.Identity.Of(t.Fact.Place)).Distinct().Where(matter.View.Knows))
        {
            var finder = new TouchFinder(matter, new BundleFinder(matter).Of(place));
            finder.Find();
            foreach (var problem in finder.Problems)
            {
                yield return problem;
            }
        }
    }

    /// <summary>Of readings by resistor and comparisons of loudness the last of each wire counts: what misled one misleads the next.</summary>
    public IReadOnlyList<NotedTouching> Find()
    {
        var all = matter.History.Facts.Touches.Where(t => view.Identity.Of(t.Fact.Place) == bundle.Place).Select(Read).OfType<NotedTouching>().ToList();
        return [.. all.Where((t, i) => t.Touching.Way.Shows == NamingSign.Answers || !all.Skip(i + 1).Any(later => later.IsOfTheSame(t)))];
    }

    private NotedTouching? Read(Observed<TouchFact> note)
    {
        var fact = note.Fact;
        if (matter.Book.Naming.Way(fact.How) is not { } way)
        {
            return Refuse(note, $"is done by '{fact.How}', which is no way of naming in the practice book", $"Use one of: {string.Join(", ", matter.Book.Naming.Ways.Select(w => w.Name))}");
        }

        var answered = Rows(fact.Answered);
        var against = fact.Against is { } end ? bundle.RowOf(view.Identity.Of(end)) : -1;
        var touched = Rows(fact.Touched).Concat(answered).Distinct().Where(r => r != against).ToList();
        var put = new bool[bundle.Wires.Count];
        foreach (var id in fact.Put)
        {
            if (bundle.ColumnOf(view.Identity.Of(id)) is var column and >= 0)
            {
                put[column] = true;
            }
            else
            {
                Refuse(note, $"puts it on '{id}', which is no station, controller (its common) or end at a controller", "Strike it and name the wire by its station, or note the end at the controller");
            }
        }

        if (Fault(note, way, put, touched, answered, against) is var (reason, remedy))
        {
            return Refuse(note, reason, remedy);
        }

        var touching = new Touching(way, put, touched, answered.ToHashSet()) { Ohms = Ohms(note, touched, put), Against = against };
        Problems.AddRange(new TouchDoubts(matter, bundle).Of(note, touching));
        return new NotedTouching(note, touching);
    }

    /// <summary>Why a round tells nothing, and what to do about it.</summary>
    private (string Reason, string Remedy)? Fault(Observed<TouchFact> note, NamingWay way, bool[] put, List<int> touched, List<int> answered, int against)
    {
        if (note.Fact.Against is { } lead && against < 0)
        {
            return ($"has the other lead on '{lead}', which is no conductor end of this place", "Strike it and note it again with the end that the lead was on");
        }

        if (note.Fact.Answered.FirstOrDefault(e => bundle.RowOf(view.Identity.Of(e)) < 0) is { } stranger)
        {
            // Whoever wrote it meant another end: to take the round without it would say of that end that it did not answer.
            return ($"says that '{stranger}' answered, which is no conductor end of this place", "Strike it and note it again with the end that answered");
        }

        if (note.Fact.Value?.Value is { } value && value.Dimension != Dimension.Resistance)
        {
            return ($"gives '{value.Text}', which is {Units.Name(value.Dimension)}, where an ohmmeter shows {Units.Name(Dimension.Resistance)}", "Strike it and note it again with what the meter showed in ohms, or \"over range\"");
        }

        if (touched.Count == 0)
        {
            return answered.Concat(Rows(note.Fact.Touched)).Contains(against)
                ? ("touches the very end that the other lead is on, and no other", "Name the ends that were touched under 'touched', the one with the other lead under 'against'")
                : ("touches no conductor end of this place", "Note the ends first, then name them under 'touched'");
        }

        return !put.Contains(true) ? ("does not say what carried it", "Name stations, or ends at the controller, under 'put'")
            : way.Shows == NamingSign.Loudest && put.Count(p => p) > 1 ? ($"puts '{way.Name}' on several wires, which tells nothing", "Put it on one wire at a time")
            : way.Shows == NamingSign.Ohms && note.Fact.Value is null ? ($"is a reading by '{way.Name}' without what the meter showed", "Give it under 'value': \"224.6 ohm\", or \"over range\"")
            : way.Shows == NamingSign.Ohms && touched.All(row => Fitted(row, note.Moment) is null) ? ("reads ohms, but no resistor is noted on any of the ends touched", "Note each resistor first: {\"kind\":\"resistor\",\"end\":\"e1\",\"ohms\":\"220 ohm\"}")
            : null;
    }

    private List<int> Rows(IReadOnlyList<string> ends) => [.. ends.Select(e => bundle.RowOf(view.Identity.Of(e))).Where(r => r >= 0)];

    /// <summary>What the meter would show at the far side for each end, by the resistors that stood when it was read.</summary>
    private ResistorReading? Ohms(Observed<TouchFact> note, List<int> touched, bool[] put)
    {
        if (note.Fact.Value is not { } shown || matter.Book.InstrumentOf(Measure.StationOhms) is not { } meter)
        {
            return null;
        }

        var wire = bundle.Wires[Array.IndexOf(put, true) is var w and >= 0 ? w : 0];
        var fitted = touched.Select(row => Fitted(row, note.Moment)).ToArray();
        return new ResistorReading(
            shown.Value?.Si,
            [.. fitted.Select(f => f is { } ohms ? ohms + (2 * wire.Ohms) : meter.Most)],
            [.. fitted.Select(f => ResistorChoice.Sigma(f ?? meter.Most, wire.Ohms, wire.LogSpread, meter, matter.Book.Naming))],
            meter.Least,
            meter.Most);
    }

    private double? Fitted(int row, Moment moment) => matter.History.Facts.Resistors
        .LastOrDefault(r => r.Moment <= moment && bundle.RowOf(view.Identity.Of(r.Fact.End)) == row)?.Fact.Ohms?.Ohms;

    private NotedTouching? Refuse(Observed<TouchFact> note, string reason, string remedy)
    {
        Problems.Add(new Problem(note.Entry.ToString(), reason, remedy));
        return null;
    }
}
