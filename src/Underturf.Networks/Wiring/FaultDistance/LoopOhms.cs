using Underturf.Quantities;

namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>A run, its return and their contacts as one loop of ohms, for the bridges.</summary>
internal sealed class LoopOhms
{
    private readonly RunProfile profile;
    private readonly Uncertain[] faulty;
    private readonly Uncertain contact;

    internal LoopOhms(Run run, BridgeContacts contacts)
    {
        profile = new RunProfile(run);
        faulty = profile.FaultyOhmsPerMetre();
        contact = Unknowns.Add("contact at the faulty conductor", contacts.FaultyEnd);
        Computed = contact + profile.Total(faulty)
            + Unknowns.Add("joint at the far end", contacts.FarJoint)
            + profile.Total(profile.ReturnOhmsPerMetre())
            + Unknowns.Add("contact at the return conductor", contacts.ReturnEnd);
    }

    internal Unknowns Unknowns => profile.Unknowns;

    /// <summary>Ohms of the whole loop as the run's lengths and gauges have it.</summary>
    internal Uncertain Computed { get; }

    /// <param name="seen">Ohms between the bridge's terminal at the faulty conductor and the fault, contact included.</param>
    internal Outcome<DistanceEstimate> PlaceAt(Uncertain seen, string method) => profile.PlaceWhere(faulty, seen - contact, method);
}
