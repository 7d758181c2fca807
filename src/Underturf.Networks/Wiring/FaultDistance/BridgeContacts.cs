using Underturf.Networks.Wiring.Instruments;
using Underturf.Quantities;

namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>Ohms of test leads and contacts around a loop, which a bridge cannot tell from wire.</summary>
/// <param name="FaultyEnd">Lead and clip between the bridge and the faulty conductor.</param>
/// <param name="FarJoint">The joint of the two conductors at the far end.</param>
/// <param name="ReturnEnd">Lead and clip between the bridge and the return conductor.</param>
public readonly record struct BridgeContacts(MeasuredOhms FaultyEnd, MeasuredOhms FarJoint, MeasuredOhms ReturnEnd)
{
    internal Problem? Check(string place) =>
        FaultyEnd.Check($"{place}, contact at the faulty conductor", mayBeZero: true)
        ?? FarJoint.Check($"{place}, joint at the far end", mayBeZero: true)
        ?? ReturnEnd.Check($"{place}, contact at the return conductor", mayBeZero: true);
}
