using Underturf.Networks.Wiring.Instruments;
using Underturf.Quantities;

namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>
/// A Murray loop: the far ends joined, the two near ends on the two arms of a bridge, the battery between the arms' meeting point and earth.
/// </summary>
/// <remarks>
/// Balance: P (c + r) = Q (loop - c - r), hence r = loop Q / (P + Q) - c, with r the ohms of the faulty conductor up to the fault and c the
/// contact at its near end. The fault's own ohms stand in the battery's branch and do not matter. One fault only. With like gauges and
/// perfect contacts this is x = 2 L Q / (P + Q) (textbooks of electrical measurement, from memory; a state utility's examination paper, seen).
/// </remarks>
public sealed record MurrayLoop
{
    private const string Method = "Murray loop";

    /// <summary>P, the arm on the return conductor.</summary>
    public required MeasuredOhms ReturnArm { get; init; }

    /// <summary>Q, the arm on the faulty conductor.</summary>
    public required MeasuredOhms FaultyArm { get; init; }

    /// <summary>The loop with its contacts read by an ohmmeter from end to end; without it the run's lengths and gauges stand in.</summary>
    public MeasuredOhms? Loop { get; init; }

    public BridgeContacts Contacts { get; init; }

    public FarEnd FarEnd { get; init; } = FarEnd.Joined;

    public Outcome<DistanceEstimate> Locate(Run run)
    {
        if ((RunCheck.Check(run) ?? Check()) is { } problem)
        {
            return problem;
        }

        var loop = new LoopOhms(run, Contacts);
        var p = loop.Unknowns.Add("arm on the return conductor", ReturnArm);
        var q = loop.Unknowns.Add("arm on the faulty conductor", FaultyArm);
        var whole = Loop is { } read ? loop.Unknowns.Add("loop ohms", read) : loop.Computed;
        return loop.PlaceAt(whole * q / (p + q), Method);
    }

    private Problem? Check() =>
        RunCheck.FarEndIs(FarEnd.Joined, FarEnd, Method)
        ?? ReturnArm.Check($"{Method}, arm on the return conductor")
        ?? FaultyArm.Check($"{Method}, arm on the faulty conductor")
        ?? Loop?.Check($"{Method}, loop ohms")
        ?? Contacts.Check(Method);
}
