using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Identification;

/// <summary>A round of touches with the note that says it.</summary>
internal sealed record NotedTouching(Observed<TouchFact> Note, Touching Touching)
{
    /// <summary>The same way on the same wires, the other lead on the same end; of valves that were listened to, none that this one leaves out.</summary>
    public bool IsOfTheSame(NotedTouching other) =>
        other.Touching.Way == Touching.Way && other.Touching.Turned == Touching.Turned && other.Touching.Lead == Touching.Lead && other.Touching.Put.SequenceEqual(Touching.Put)
        && (Touching.Way.Shows != NamingSign.Onward || other.Touching.Touched.All(Touching.Touched.Contains));
}

/// <summary>Reads the notes of touches at a place; names those that cannot be used.</summary>
internal sealed class TouchFinder(Case matter, Bundle bundle)
{
    private readonly PropertyView view = matter.View;
    private readonly TouchDoubts doubts = new(matter, bundle);

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
        var kept = new List<NotedTouching>();
        foreach (var (at, touch) in all.Index())
        {
            if (touch.Touching.Way.Shows == NamingSign.Answers || all.Skip(at + 1).FirstOrDefault(later => later.IsOfTheSame(touch)) is not { } later)
            {
                kept.Add(touch);
            }
            else if (touch.Touching.Shows is { } one && later.Touching.Shows is { } other && one != other)
            {
                Problems.Add(doubts.ReadAgain(touch, later));
            }
        }

        return kept;
    }

    private NotedTouching? Read(Observed<TouchFact> note)
    {
        var fact = note.Fact;
        if (matter.Book.Naming.Way(fact.How) is not { } way)
        {
            return Refuse(note, $"is done by '{fact.How}', which is no way of naming in the practice book", $"Use one of: {string.Join(", ", matter.Book.Naming.Ways.Select(w => w.Name))}");
        }

        var turned = fact.Put.Any(IsEnd);
        var (answered, against) = (Touchables(fact.Answered, turned), fact.Against is { } end ? bundle.RowOf(view.Identity.Of(end)) : -1);
        var touched = Touchables(fact.Touched, turned).Concat(answered).Distinct().Where(t => turned || t != against).ToList();
        var put = Carriers(note, turned);
        var fault = (turned ? TouchFaults.OfTurned(fact, way, put, against, bundle) : null) ?? Fault(note, way, turned, put, touched, answered, against);
        if (fault is var (reason, remedy))
        {
            return Refuse(note, reason, remedy);
        }

        var touching = new Touching(way, put, touched, answered.ToHashSet()) { Ohms = Ohms(note, touched, put, turned), Against = against, Turned = turned };
        if (touching is { Way.Shows: NamingSign.Ohms, Ohms: { IsShort: true } })
        {
            return Refuse(note, $"reads {note.Fact.Value?.Value?.Text}, less than the resistors noted there let through: leads that touch, or a conductor that lies on the common", "Look at the leads and at both ends, strike the note and read once more");
        }

        Problems.AddRange(doubts.Of(note, touching));
        return new NotedTouching(note, touching);
    }

    private bool IsEnd(string id) => bundle.RowOf(view.Identity.Of(id)) >= 0;

    /// <summary>What carried it: wires, or ends of the place where it is turned.</summary>
    private bool[] Carriers(Observed<TouchFact> note, bool turned)
    {
        var put = new bool[bundle.Count(wires: !turned)];
        foreach (var id in note.Fact.Put)
        {
            if (bundle.At(view.Identity.Of(id), isWire: !turned) is var carrier and >= 0)
            {
                put[carrier] = true;
            }
            else
            {
                _ = turned
                    ? Refuse(note, $"puts it on '{id}', which is no conductor end of this place, and on others that are", "Strike it and note it again: from the place all of 'put' are its ends, from the controller none of them is")
                    : Refuse(note, $"puts it on '{id}', which is no station, controller (its common) or end at a controller", "Strike it and name the wire by its station, or note the end at the controller");
            }
        }

        return put;
    }

    /// <summary>Why a round tells nothing, and what to do about it.</summary>
    private (string Reason, string Remedy)? Fault(Observed<TouchFact> note, NamingWay way, bool turned, bool[] put, List<int> touched, List<int> answered, int against)
    {
        if (note.Fact.Against is { } lead && against < 0)
        {
            return ($"has the other lead on '{lead}', which is no conductor end of this place", "Strike it and note it again with the end that the lead was on");
        }

        if (note.Fact.Answered.FirstOrDefault(e => Touchable(e, turned) < 0) is { } stranger)
        {
            // Whoever wrote it meant another: to take the round without it would say of that one that it did not answer.
            return ($"says that '{stranger}' answered, which is no {(turned ? "wire that leaves a controller" : "conductor end of this place")}", $"Strike it and note it again with {(turned ? "the station, controller (its common) or end at the controller" : "the end")} that answered");
        }

        if (note.Fact.Value?.Value is { } value && value.Dimension != Dimension.Resistance)
        {
            return ($"gives '{value.Text}', which is {Units.Name(value.Dimension)}, where an ohmmeter shows {Units.Name(Dimension.Resistance)}", "Strike it and note it again with what the meter showed in ohms, or \"over range\"");
        }

        if (touched.Count == 0)
        {
            return !turned && answered.Concat(Touchables(note.Fact.Touched, turned)).Contains(against)
                ? ("touches the very end that the other lead is on, and no other", "Name the ends that were touched under 'touched', the one with the other lead under 'against'")
                : turned ? ("touches no wire that leaves a controller", "Name stations, the controller (its common) or ends at the controller under 'touched'")
                : ("touches no conductor end of this place", "Note the ends first, then name them under 'touched'");
        }

        return way.Shows == NamingSign.Onward && !turned ? ($"puts '{way.Name}' on no end of the place", "Name the end that carried under 'put', and the stations whose valves were listened to under 'touched'")
            : !put.Contains(true) ? ("does not say what carried it", "Name stations, or ends at the controller, under 'put'")
            : way.Shows == NamingSign.Loudest && put.Count(p => p) > 1 ? ($"puts '{way.Name}' on several wires, which tells nothing", "Put it on one wire at a time")
            : way.Shows == NamingSign.Ohms && note.Fact.Value is null ? ($"is a reading by '{way.Name}' without what the meter showed", "Give it under 'value': \"224.6 ohm\", or \"over range\"")
            : way.Shows == NamingSign.Ohms && touched.All(t => Fitted(t, turned, note.Moment) is null) ? ($"reads ohms, but no resistor is noted on any of the {(turned ? "wires" : "ends")} touched", $"Note each resistor first: {{\"kind\":\"resistor\",\"end\":\"{(turned ? "s1" : "e1")}\",\"ohms\":\"220 ohm\"}}")
            : null;
    }

    private int Touchable(string id, bool turned) => bundle.At(view.Identity.Of(id), isWire: turned);

    private List<int> Touchables(IReadOnlyList<string> ids, bool turned) => [.. ids.Select(id => Touchable(id, turned)).Where(t => t >= 0)];

    /// <summary>What the meter would show at the far side for each that was touched, by the resistors that stood when it was read.</summary>
    private ResistorReading? Ohms(Observed<TouchFact> note, List<int> touched, bool[] put, bool turned)
    {
        if (note.Fact.Value is not { } shown || matter.Book.InstrumentOf(Measure.StationOhms) is not { } meter)
        {
            return null;
        }

        Wire WireOf(int one) => bundle.Wires[turned ? one : Array.IndexOf(put, true) is var w and >= 0 ? w : 0];
        var fitted = touched.Select(t => (Ohms: Fitted(t, turned, note.Moment), Wire: WireOf(t))).ToArray();
        return new ResistorReading(
            shown.Value?.Si,
            [.. fitted.Select(f => f.Ohms is { } ohms ? ohms + (2 * f.Wire.Ohms) : meter.Most)],
            [.. fitted.Select(f => ResistorChoice.Sigma(f.Ohms ?? meter.Most, f.Wire.Ohms, f.Wire.LogSpread, meter, matter.Book.Naming))],
            meter.Least,
            meter.Most);
    }

    private double? Fitted(int one, bool turned, Moment moment) => matter.History.Facts.Resistors
        .LastOrDefault(r => r.Moment <= moment && Touchable(r.Fact.End, turned) == one)?.Fact.Ohms?.Ohms;

    private NotedTouching? Refuse(Observed<TouchFact> note, string reason, string remedy)
    {
        Problems.Add(new Problem(note.Entry.ToString(), reason, remedy));
        return null;
    }
}
