using Underturf.Networks.Wiring.Instruments;
using Underturf.Quantities;

namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>What the test current of a two-end reading flows through.</summary>
public enum FaultPath
{
    /// <summary>Out by the conductor and back by the ground.</summary>
    ToEarth,

    /// <summary>Out by one conductor and back by the other, where the two touch.</summary>
    BetweenPair,
}

/// <summary>Ohms of a leak or a short read from both ends of the run, the other end free each time.</summary>
/// <remarks>
/// near = c_n + r + F and far = c_f + R - r + F, with F the fault's ohms (and the earth pin's), so r = (R + near - c_n - far + c_f) / 2. F
/// drops out as far as it is the same in both readings; what it moves by meanwhile is <see cref="FaultMovesOhms"/> (derived, exact).
/// </remarks>
public sealed record TwoEndOhms
{
    private const string Method = "two-end ohms";

    public required FaultPath Path { get; init; }

    /// <summary>Read at the near end.</summary>
    public required MeasuredOhms Near { get; init; }

    /// <summary>Read at the far end.</summary>
    public required MeasuredOhms Far { get; init; }

    /// <summary>Leads and contacts at the near end.</summary>
    public MeasuredOhms NearContact { get; init; }

    /// <summary>Leads and contacts at the far end.</summary>
    public MeasuredOhms FarContact { get; init; }

    /// <summary>Standard deviation of the change of the fault's ohms between the two readings: wet faults dry out and polarise.</summary>
    public double FaultMovesOhms { get; init; }

    /// <summary>How the other end was left, both times.</summary>
    public FarEnd FarEnd { get; init; } = FarEnd.Free;

    public Outcome<DistanceEstimate> Locate(Run run)
    {
        if ((RunCheck.Check(run) ?? Check()) is { } problem)
        {
            return problem;
        }

        var profile = new RunProfile(run);
        var unknowns = profile.Unknowns;
        var perMetre = profile.FaultyOhmsPerMetre();
        perMetre = Path == FaultPath.ToEarth ? perMetre : [.. perMetre.Zip(profile.ReturnOhmsPerMetre(), (o, b) => o + b)];
        var near = unknowns.Add("ohms at the near end", Near) - unknowns.Add("contact at the near end", NearContact);
        var far = unknowns.Add("ohms at the far end", Far) - unknowns.Add("contact at the far end", FarContact);
        var moved = unknowns.Add("change of the fault", 0, FaultMovesOhms);
        return profile.PlaceWhere(perMetre, (profile.Total(perMetre) + near - far + moved) / 2, Method);
    }

    private Problem? Check() =>
        RunCheck.FarEndIs(FarEnd.Free, FarEnd, Method)
        ?? Near.Check($"{Method}, near end")
        ?? Far.Check($"{Method}, far end")
        ?? NearContact.Check($"{Method}, contact at the near end", mayBeZero: true)
        ?? FarContact.Check($"{Method}, contact at the far end", mayBeZero: true)
        ?? new MeasuredOhms(0, FaultMovesOhms).Check($"{Method}, change of the fault", mayBeZero: true);
}
