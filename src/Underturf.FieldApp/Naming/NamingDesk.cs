using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>What is known of the ends of the box that is being worked at, and whether that is being worked out anew.</summary>
public sealed class NamingDesk
{
    public NamingDraft Draft { get; set; } = new();

    /// <summary>Id of the box that the answer is of.</summary>
    public string? Box { get; private set; }

    public NamingAnswer? Answer { get; private set; }

    /// <summary>Every plan as it was ranked last: one that was chosen is not ranked again.</summary>
    public IReadOnlyList<NamingPlan> Plans { get; private set; } = [];

    public Problem? Trouble { get; private set; }

    public bool Working { get; private set; }

    public NamingAsk Begin(string box)
    {
        if (Box is not null && Box != box)
        {
            Draft = new NamingDraft { People = Draft.People, Remote = Draft.Remote };
        }

        (Answer, Plans) = Box == box ? (Answer, Plans) : (null, []);
        (Box, Working, Trouble) = (box, true, null);
        return new NamingAsk(box, Draft.People, Draft.Remote, Draft.Plan);
    }

    public void End(Outcome<NamingAnswer> named)
    {
        (Working, Trouble) = (false, named.Problem);
        if (named.Succeeded)
        {
            Answer = named.Value;
            Plans = Draft.Plan is null || Plans.Count == 0 ? named.Value.Plans : Plans;
        }
    }

    /// <summary>It was given up; what was known before stays.</summary>
    public void GiveUp() => Working = false;
}
