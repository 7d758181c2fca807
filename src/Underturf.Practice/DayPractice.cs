namespace Underturf.Property.Practice;

/// <summary>Which stations a state in which a place was left bears on.</summary>
public enum StateReach
{
    /// <summary>Those with a valve there; all of the controller where the place is one.</summary>
    Valves,

    /// <summary>One of those whose wires pass there, as long as nobody says which.</summary>
    Wires,

    /// <summary>All of the controller.</summary>
    Controller,
}

/// <summary>What a fault does to a station that is run all the same. Belief says how likely the faults are that do so.</summary>
public enum RunEffect
{
    /// <summary>Its wire or coil touches the common, or its coil has lost turns.</summary>
    ShortCircuit,

    /// <summary>Its wire leaks to earth.</summary>
    EarthLeak,

    /// <summary>It hangs on another common.</summary>
    OtherCommon,

    /// <summary>Ohms in its way, as of a bad splice.</summary>
    AddedOhms,

    /// <summary>The supply gives too little.</summary>
    WeakSupply,

    /// <summary>It does not conduct.</summary>
    Open,

    /// <summary>Other places water with it.</summary>
    MorePlaces,

    /// <summary>Water runs out where it should not while it runs.</summary>
    Spills,

    /// <summary>Its valve does not close.</summary>
    RunsOn,

    /// <summary>Something that no fault of the book explains.</summary>
    Unmodelled,
}

/// <summary>What may go wrong while a station runs.</summary>
/// <param name="Unattended">Chance that it does harm in a night with nobody there.</param>
/// <param name="Attended">The same with somebody there who can stop it.</param>
/// <param name="Minutes">What the harm costs.</param>
public sealed record HarmPractice(string Source, string Say, double Unattended, double Attended, double Minutes);

/// <summary>What an effect does to a station that is run.</summary>
/// <param name="Dry">Chance that the station waters nothing.</param>
public sealed record EffectPractice(RunEffect Effect, double Dry, HarmPractice Harm);

/// <summary>A state in which a place is left for a time.</summary>
/// <param name="Name">As it is noted: "hole open".</param>
/// <param name="Say">What ends it, as a proposal: "fill and close the hole".</param>
/// <param name="Minutes">That this takes.</param>
/// <param name="DayLoss">Minutes of loss for each day that it stays.</param>
/// <param name="Dry">Whether the stations that it bears on have no water meanwhile.</param>
public sealed record StatePractice(string Name, string Say, double Minutes, double DayLoss, StateReach Reach, bool Dry, HarmPractice Harm);

/// <summary>How a day is ordered, and what runs in the night after it.</summary>
/// <param name="Minutes">Of work in a day.</param>
/// <param name="BrokenOffMinutes">Of work until something breaks a day off, on average: the rest of the order is not done then.</param>
/// <param name="RefillMinutes">To let the air out and fill slowly, once for each time that water was shut.</param>
/// <param name="HandDigMetres">So near a utility mark one digs by hand.</param>
/// <param name="MarksMinutes">To walk along the marks before one digs.</param>
/// <param name="RecheckDays">After work, until it is looked at again.</param>
/// <param name="RecheckFails">Chance that it is found not to have held.</param>
/// <param name="DryMinutes">What a day without water costs a station.</param>
/// <param name="HandMinutes">To open a station by hand, watch it and see it close.</param>
/// <param name="RunMinutes">A station runs where nobody noted for how long.</param>
/// <param name="TrifleMinutes">Harm below this, in minutes of loss, is not spoken of.</param>
/// <param name="Digs">Repairs for which ground is dug, so that utilities are marked first.</param>
/// <param name="OpensWater">Repairs that open what holds water under pressure, so that it is shut off first.</param>
public sealed record DayPractice(
    string Source,
    double Minutes,
    double BrokenOffMinutes,
    double RefillMinutes,
    double HandDigMetres,
    double MarksMinutes,
    double RecheckDays,
    double RecheckFails,
    double DryMinutes,
    double HandMinutes,
    double RunMinutes,
    double TrifleMinutes,
    IReadOnlyList<string> Digs,
    IReadOnlyList<string> OpensWater,
    IReadOnlyList<StatePractice> States,
    IReadOnlyList<EffectPractice> Effects)
{
    /// <summary>The state that somebody's words name, the longest that they hold; nothing where they name none that lasts only for a time.</summary>
    public StatePractice? StateOf(string words) => States.Where(s => words.Contains(s.Name, StringComparison.OrdinalIgnoreCase)).MaxBy(s => s.Name.Length);

    public EffectPractice? Of(RunEffect effect) => Effects.FirstOrDefault(e => e.Effect == effect);
}

/// <summary>What must hold between the numbers of a day.</summary>
internal static class DayCheck
{
    public static IEnumerable<(bool Holds, string Place, string Reason)> Of(PracticeBook book)
    {
        var day = book.Day;
        foreach (var name in day.Digs.Concat(day.OpensWater))
        {
            yield return (book.Repair(name) is not null, "day", $"names an unknown repair '{name}'");
        }

        foreach (var (place, value) in new (string, double)[]
        {
            ("minutes", day.Minutes), ("brokenOffMinutes", day.BrokenOffMinutes), ("runMinutes", day.RunMinutes),
        })
        {
            yield return (value > 0 && double.IsFinite(value), $"day.{place}", "must be more than zero");
        }

        foreach (var (place, value) in new (string, double)[]
        {
            ("refillMinutes", day.RefillMinutes), ("handDigMetres", day.HandDigMetres), ("marksMinutes", day.MarksMinutes),
            ("recheckDays", day.RecheckDays), ("dryMinutes", day.DryMinutes), ("handMinutes", day.HandMinutes), ("trifleMinutes", day.TrifleMinutes),
        })
        {
            yield return (value >= 0 && double.IsFinite(value), $"day.{place}", "must not be below zero");
        }

        yield return (day.RecheckFails is >= 0 and <= 1, "day.recheckFails", "must be a chance between 0 and 1");
        foreach (var (place, harm) in day.States.Select(s => ($"day.states {s.Name}", s.Harm)).Concat(day.Effects.Select(e => ($"day.effects {e.Effect}", e.Harm))))
        {
            yield return (harm is { Unattended: >= 0 and <= 1, Attended: >= 0 and <= 1, Minutes: >= 0 } && double.IsFinite(harm.Minutes), place, "needs chances between 0 and 1 and minutes of zero or more");
        }

        yield return (day.States.All(s => s is { Minutes: >= 0, DayLoss: >= 0 } && s.Name.Length > 0 && double.IsFinite(s.Minutes + s.DayLoss)), "day.states", "needs names, and minutes of zero or more");
        yield return (day.Effects.All(e => e.Dry is >= 0 and <= 1), "day.effects", "has a chance outside 0 to 1");
        yield return (day.Effects.Select(e => e.Effect).Distinct().Count() == day.Effects.Count, "day.effects", "has an effect twice");
        yield return (day.States.Select(s => s.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count() == day.States.Count, "day.states", "has a name twice");
    }
}
