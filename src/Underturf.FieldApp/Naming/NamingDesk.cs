using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>What is known of the ends of the box that is being worked at.</summary>
public sealed class NamingDesk : Desk<NamingAnswer>
{
    public NamingDraft Draft { get; set; } = new();

    /// <summary>Id of the box that the answer is of.</summary>
    public string? Box { get; private set; }

    /// <summary>Every plan as it was ranked last: one that was chosen is not ranked again.</summary>
    public IReadOnlyList<NamingPlan> Plans { get; private set; } = [];

    /// <summary>What is asked next: what is known of another box is no answer to it.</summary>
    public NamingAsk Turn(string box)
    {
        if (Box is not null && Box != box)
        {
            Draft = new NamingDraft { People = Draft.People, Remote = Draft.Remote, Source = Draft.Source };
        }

        (Answer, Plans) = Box == box ? (Answer, Plans) : (null, []);
        Box = box;
        return new NamingAsk(box, Draft.People, Draft.Remote, Draft.Plan, Draft.Source);
    }

    public override void End(Outcome<NamingAnswer> answer)
    {
        base.End(answer);
        if (answer.Succeeded)
        {
            Plans = Draft.Plan is null || Plans.Count == 0 ? answer.Value.Plans : Plans;
        }
    }
}
