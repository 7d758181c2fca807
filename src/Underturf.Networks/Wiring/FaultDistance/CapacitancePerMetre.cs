using Underturf.Networks.Wiring.Instruments;
using Underturf.Quantities;

namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>Capacitance of a broken conductor read from the near end, along a run whose capacitance a metre is known.</summary>
/// <remarks>
/// The break is where the capacitance added up along the run reaches the reading (exact). A sound conductor of the same bundle, read the
/// same way over its known length, gives the capacitance a metre; wet soil changes it, which is the run's shared spread.
/// </remarks>
public sealed record CapacitancePerMetre
{
    private const string Method = "capacitance a metre";

    public required MeasuredFarads Near { get; init; }

    /// <summary>What the meter shows with its leads in place and nothing clipped on.</summary>
    public MeasuredFarads Stray { get; init; }

    public FarEnd FarEnd { get; init; } = FarEnd.Free;

    public Outcome<DistanceEstimate> Locate(Run run)
    {
        if ((RunCheck.Check(run) ?? Check()) is { } problem)
        {
            return problem;
        }

        var profile = new RunProfile(run);
        var near = profile.Unknowns.Add("capacitance at the near end", Near) - profile.Unknowns.Add("stray capacitance", Stray);
        var perMetre = CapacitanceProfile.PerMetre(run, profile.Unknowns, allowUnknown: false, Method);
        return perMetre.Succeeded ? profile.PlaceWhere(perMetre.Value, near, Method) : perMetre.Problem!;
    }

    private Problem? Check() =>
        RunCheck.FarEndIs(FarEnd.Free, FarEnd, Method)
        ?? Near.Check($"{Method}, near end")
        ?? CapacitanceProfile.CheckStray(Stray, Method, Near);
}
