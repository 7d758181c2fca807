using Underturf.Networks.Wiring.Instruments;
using Underturf.Quantities;

namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>
/// A Varley loop: two fixed arms, the far ends joined, and an adjustable resistance in series with the faulty conductor. The battery goes
/// to earth for one balance and to the faulty conductor's near end for the other.
/// </summary>
/// <remarks>
/// Battery at earth: P (S_e + r) = Q (loop - r); at the conductor: P S_l = Q loop. Hence r = P (S_l - S_e) / (P + Q), and without the second
/// balance r = (Q loop - P S_e) / (P + Q) with the loop as computed; r includes the contact at the near end (textbooks, from memory).
/// </remarks>
public sealed record VarleyLoop
{
    private const string Method = "Varley loop";

    /// <summary>P, the fixed arm on the return conductor.</summary>
    public required MeasuredOhms ReturnArm { get; init; }

    /// <summary>Q, the fixed arm on the adjustable resistance, behind which the faulty conductor begins.</summary>
    public required MeasuredOhms FaultyArm { get; init; }

    /// <summary>S_e, the adjustable resistance at balance with the battery at earth; may be zero.</summary>
    public required MeasuredOhms AtEarth { get; init; }

    /// <summary>S_l, at balance with the battery at the near end of the faulty conductor; without it the run stands in.</summary>
    public MeasuredOhms? AtConductor { get; init; }

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
        var atEarth = loop.Unknowns.Add("balance at earth", AtEarth);
        var seen = AtConductor is { } second
            ? p * (loop.Unknowns.Add("balance at the conductor", second) - atEarth) / (p + q)
            : ((q * loop.Computed) - (p * atEarth)) / (p + q);
        return loop.PlaceAt(seen, Method);
    }

    private Problem? Check() =>
        RunCheck.FarEndIs(FarEnd.Joined, FarEnd, Method)
        ?? ReturnArm.Check($"{Method}, arm on the return conductor")
        ?? FaultyArm.Check($"{Method}, arm on the faulty conductor")
        ?? AtEarth.Check($"{Method}, balance at earth", mayBeZero: true)
        ?? AtConductor?.Check($"{Method}, balance at the conductor")
        ?? Contacts.Check(Method);
}
