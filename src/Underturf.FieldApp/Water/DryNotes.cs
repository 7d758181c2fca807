using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Reasoning.Water;

namespace Underturf.FieldApp;

/// <summary>What is written while a place is made dry, and what of it stands.</summary>
internal static class DryNotes
{
    private const string Job = "making dry";
    private const string Proof = "no pressure";

    /// <summary>A point of connection is no valve: how it was left says that it is off.</summary>
    public static Fact Shut(string id, PropertyView view) => view.WaterSupplies.ContainsKey(id)
        ? new LeftAsFact { Place = id, State = RunningWater.SupplyOff }
        : new SettingFact { Of = id, State = "shut" };

    public static Fact Open(string id, PropertyView view) => view.WaterSupplies.ContainsKey(id)
        ? new LeftAsFact { Place = id, State = "water on" }
        : new SettingFact { Of = id, State = "open" };

    /// <summary>Nothing can be noted of a place that nobody has noted.</summary>
    public static bool CanNote(string id, PropertyView view) => view.IsolationValves.ContainsKey(id) || view.WaterSupplies.ContainsKey(id);

    public static StepFact Proved(string place) => new() { Job = Job, Place = place, Step = Proof };

    /// <summary>When it was proved that there is no pressure: a valve that was turned after that makes it void.</summary>
    public static DateTimeOffset? ProvedAt(PropertyHistory history, IsolationAnswer answer)
    {
        var identity = history.Facts.Identity;
        var proof = history.Facts.Steps.Where(s => s.Fact.Job == Job && s.Fact.Step == Proof && identity.Of(s.Fact.Place) == answer.Id).MaxBy(s => s.Moment);
        if (proof is null || answer.Shut.Count > 0)
        {
            return null;
        }

        var turned = history.Facts.Settings.Select(s => (s.Moment, Of: s.Fact.Of)).Concat(history.Facts.LeftAs.Select(l => (l.Moment, Of: l.Fact.Place)));
        return turned.Any(t => t.Moment > proof.Moment && answer.Stands.Any(s => s.Id == identity.Of(t.Of))) ? null : proof.At;
    }
}
