using Underturf.Networks.Wiring.Instruments;
using Underturf.Quantities;

namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>Capacitance of a broken conductor read from both ends, its ends free.</summary>
/// <remarks>
/// The capacitance up to the break is the share C1 / (C1 + C2) of the whole; along a uniform run d = L C1 / (C1 + C2) (exact). What is common
/// to all capacitances a metre drops out. Where no stretch knows its capacitance, all are taken as alike.
/// </remarks>
public sealed record CapacitanceRatio
{
    private const string Method = "capacitance ratio";

    /// <summary>C1, at the near end.</summary>
    public required MeasuredFarads Near { get; init; }

    /// <summary>C2, at the far end.</summary>
    public required MeasuredFarads Far { get; init; }

    /// <summary>What the meter shows with its leads in place and nothing clipped on, the same in both readings.</summary>
    public MeasuredFarads Stray { get; init; }

    public FarEnd FarEnd { get; init; } = FarEnd.Free;

    public Outcome<DistanceEstimate> Locate(Run run)
    {
        if ((RunCheck.Check(run) ?? Check()) is { } problem)
        {
            return problem;
        }

        var profile = new RunProfile(run);
        var stray = profile.Unknowns.Add("stray capacitance", Stray);
        var near = profile.Unknowns.Add("capacitance at the near end", Near) - stray;
        var far = profile.Unknowns.Add("capacitance at the far end", Far) - stray;
        var perMetre = CapacitanceProfile.PerMetre(run, profile.Unknowns, allowUnknown: true, Method);
        return perMetre.Succeeded
            ? profile.PlaceWhere(perMetre.Value, profile.Total(perMetre.Value) * near / (near + far), Method)
            : perMetre.Problem!;
    }

    private Problem? Check() =>
        RunCheck.FarEndIs(FarEnd.Free, FarEnd, Method)
        ?? Near.Check($"{Method}, near end")
        ?? Far.Check($"{Method}, far end")
        ?? CapacitanceProfile.CheckStray(Stray, Method, Near, Far);
}
