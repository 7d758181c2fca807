using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>Who names, by which plan, and what was tapped of a round and not stored yet.</summary>
public sealed class NamingDraft
{
    public int? People { get; set; }

    public bool? Remote { get; set; }

    /// <summary>A portable 24 V source is at hand.</summary>
    public bool Source { get; set; }

    /// <summary>Name of the plan that is followed; the cheapest where none was chosen.</summary>
    public string? Plan { get; set; }

    /// <summary>The round that the taps are of.</summary>
    public string? Round { get; set; }

    /// <summary>For each end that was touched, whether it answered.</summary>
    public Dictionary<string, bool> Marks { get; init; } = [];

    /// <summary>What the display shows: digits, or over range.</summary>
    public string Value { get; set; } = "";

    public string Unit { get; set; } = "ohm";

    /// <summary>Taps of another round are put away.</summary>
    public void TurnTo(NamingRound round)
    {
        var said = $"{round.How} on {string.Join(' ', round.Put)}: {string.Join(' ', round.Touch)}";
        if (Round != said)
        {
            Round = said;
            Clear();
        }
    }

    /// <summary>The same with nothing tapped: what it is once the round is stored.</summary>
    public NamingDraft Stored() => new() { People = People, Remote = Remote, Source = Source, Plan = Plan, Round = Round, Unit = Unit };

    public void Clear()
    {
        Marks.Clear();
        Value = "";
    }

    /// <summary>In which the display can show what it reads.</summary>
    public static IReadOnlyList<string> Units { get; } = ["ohm", "kohm", "Mohm"];

    /// <summary>What the display shows, or what is still missing.</summary>
    public Outcome<Shown> Read() => Value.Length == 0
        ? new Problem("reading", "is not given yet", "Tap what the display showed")
        : PadText.Read(Value, Unit, Units);
}
