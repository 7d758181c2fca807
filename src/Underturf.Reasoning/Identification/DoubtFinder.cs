using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Identification;

/// <summary>Finds notes of touches that all the others speak against.</summary>
internal sealed class DoubtFinder(Bundle bundle, NamingBelief belief, NamingTable beforehand)
{
    /// <summary>What the others give less than this chance is doubted.</summary>
    private const double Unlikely = 0.03;

    public IEnumerable<NamingDoubt> Find(IReadOnlyList<NotedTouching> touches) =>
        touches.Select(t => (t.Note, Why: Why(t.Touching, touches))).Where(t => t.Why is not null).Select(t => new NamingDoubt(t.Note.Entry.ToString(), t.Why!));

    private string? Why(Touching round, IReadOnlyList<NotedTouching> touches) => round.Way.Shows switch
    {
        NamingSign.Answers => Answered(round, touches),
        NamingSign.Loudest => Louder(round),
        NamingSign.Ohms when round.Ohms is { } reading => round.IsCheck ? Checked(round, reading) : Read(round, reading),
        _ => null,
    };

    private string? Answered(Touching round, IReadOnlyList<NotedTouching> touches)
    {
        var without = beforehand.Clone();
        foreach (var other in touches.Where(t => t.Touching != round))
        {
            without.Take(other.Touching);
        }

        var doubted = round.Touched.Select(t => (Touched: t, Chance: belief.ChanceWithout(t, without, round))).Where(t => t.Chance < Unlikely).OrderBy(t => t.Chance).ToList();
        if (doubted is not [var (touched, chance), ..])
        {
            return null;
        }

        var name = TouchedName(round, touched);
        return $"{name} {(round.Answered.Contains(touched) ? "answered" : "did not answer")} with {round.Way.Name} on {Carried(round)}; {ByOthers(chance)}, and {Likely(round, touched)}. Touch {name} once more the same way.";
    }

    /// <summary>Where it is none of them, any is as likely to be the loudest.</summary>
    private string? Louder(Touching round)
    {
        var made = belief.Without(round).Made;
        var chance = round.Answered.Count == 0 ? made * (1 - round.Way.Imagined) : made * round.Answered.Count / round.Touched.Count;
        return chance >= Unlikely || round.Touched.Count < 2 ? null
            : round.Answered.Count == 0 ? $"none was the loudest with {round.Way.Name} on {Carried(round)}; {ByOthers(chance)}. Compare them once more."
            : $"{TouchedName(round, round.Answered.First())} was the loudest with {round.Way.Name} on {Carried(round)}; {ByOthers(chance)}, and {Likely(round, round.Answered.First())}. Compare them once more.";
    }

    private string? Read(Touching round, ResistorReading reading)
    {
        var (others, made) = belief.Without(round);
        if (reading.Shown is not { } shown)
        {
            var open = made * (1 - round.Way.Imagined);
            return open >= Unlikely ? null : $"{Carried(round)} read over range by {round.Way.Name}; {ByOthers(open)}. Look whether every resistor makes contact and read {Carried(round)} once more.";
        }

        if (reading.Closest is not { } closest)
        {
            return $"{Carried(round)} read {Ohms(shown)}, which is what none of the resistors noted would show. Look whether one is off, another one or joined to its neighbour, and read {Carried(round)} once more.";
        }

        var (touched, share) = (round.Touched[closest], others[round.Touched[closest]]);
        var chance = (share * (1 - round.Way.Missed)) + ((1 - share) * round.Way.Imagined);
        return chance >= Unlikely ? null : $"{Carried(round)} read {Ohms(shown)} by {round.Way.Name}, which is the resistor on {TouchedName(round, touched)}; {ByOthers(chance)}, and {Likely(round, touched)}. Read {Carried(round)} once more.";
    }

    private string? Checked(Touching round, ResistorReading reading)
    {
        var right = belief.LeadWithout(round);
        var shows = (right * (1 - round.Way.Missed)) + ((1 - right) * round.Way.Imagined);
        var chance = reading.Shown is null ? 1 - shows : shows;
        return chance >= Unlikely ? null : $"{round.Way.Name} on {Carried(round)} together read {(reading.Shown is { } shown ? Ohms(shown) : "over range")}; {ByOthers(chance)}. Look where the other lead is and read them together once more.";
    }

    private static string Ohms(double ohms) => Say.Figure(ohms, Dimension.Resistance);

    private static string ByOthers(double chance) => $"by all other notes that has a chance of {Say.Share(chance)}";

    private string Carried(Touching round) => RoundWriter.Said(bundle, Enumerable.Range(0, round.Put.Length).Where(one => round.Put[one]), round.Turned);

    private string TouchedName(Touching round, int touched) => bundle.NameOf(touched, round.Turned);

    /// <summary>"it is station 4 (98 %)"; of a wire the end that it is.</summary>
    private string Likely(Touching round, int touched)
    {
        if (round.Turned)
        {
            var end = Enumerable.Range(0, bundle.Ends.Count).MaxBy(e => belief.Shares[e, touched]);
            return belief.Shares[end, touched] >= 0.5 ? $"it is {bundle.NameOf(end, isWire: false)} ({Say.Share(belief.Shares[end, touched])})" : "it is none of these ends for sure";
        }

        var (wire, share) = belief.Best(touched);
        return $"it is {(wire < bundle.Wires.Count ? bundle.Wires[wire].Name : "no wire of a controller")} ({Say.Share(share)})";
    }
}
