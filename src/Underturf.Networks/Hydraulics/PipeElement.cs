namespace Underturf.Networks.Hydraulics;

/// <summary>What an element of a pipe network is.</summary>
public enum PipeElementKind
{
    Pipe,
    Supply,
    Meter,
    Backflow,
    Isolation,
    Check,
    Regulator,
    Valve,
    MasterValve,
}

/// <summary>
/// Something that water flows through from junction A to junction B. Its losses add up: friction along its length, losses that grow with the
/// square of the flow, and a maker's curve.
/// </summary>
/// <param name="Name">For reports only.</param>
public sealed record PipeElement(string Name, PipeElementKind Kind, int A, int B)
{
    public double LengthMetres { get; init; }

    /// <summary>Zero where nobody asks for its velocity.</summary>
    public double InsideDiameterMetres { get; init; }

    /// <summary>Law of the friction along the length; null for none.</summary>
    public Friction? Friction { get; init; }

    /// <summary>r of h = r Q^1.852, besides the friction.</summary>
    public double ResistancePerFlowFactor { get; init; }

    /// <summary>m of h = m Q^2.</summary>
    public double ResistancePerFlowSquaredFactor { get; init; }

    public LossCurve? Curve { get; init; }

    /// <summary>Lets nothing through from B to A.</summary>
    public bool IsOneWay { get; init; }

    /// <summary>Shut by hand or by its controller.</summary>
    public bool IsClosed { get; init; }

    /// <summary>Lets no more than this through; null for as much as comes.</summary>
    public double? MostCubicMetresPerSecond { get; init; }

    /// <summary>Lets no more than this pressure stand at B; null for none.</summary>
    public double? RegulatedPascals { get; init; }

    public static PipeElement Pipe(string name, int a, int b, double lengthMetres, double insideDiameterMetres, Friction friction, double minorLossFactor = 0) =>
        new(name, PipeElementKind.Pipe, a, b)
        {
            LengthMetres = lengthMetres,
            InsideDiameterMetres = insideDiameterMetres,
            Friction = friction,
            ResistancePerFlowSquaredFactor = minorLossFactor == 0 ? 0 : MinorLoss.ResistancePerFlowSquaredFactor(minorLossFactor, insideDiameterMetres),
        };

    public static PipeElement Meter(string name, int a, int b, LossCurve curve) => new(name, PipeElementKind.Meter, a, b) { Curve = curve, IsOneWay = true };

    public static PipeElement Backflow(string name, int a, int b, LossCurve curve) => new(name, PipeElementKind.Backflow, a, b) { Curve = curve, IsOneWay = true };

    public static PipeElement Isolation(string name, int a, int b, double insideDiameterMetres, double minorLossFactor, bool isClosed = false) =>
        Fitting(name, PipeElementKind.Isolation, a, b, insideDiameterMetres, minorLossFactor) with { IsClosed = isClosed };

    public static PipeElement Check(string name, int a, int b, double insideDiameterMetres, double minorLossFactor) =>
        Fitting(name, PipeElementKind.Check, a, b, insideDiameterMetres, minorLossFactor) with { IsOneWay = true };

    public static PipeElement Regulator(string name, int a, int b, double regulatedPascals, double insideDiameterMetres, double minorLossFactor) =>
        Fitting(name, PipeElementKind.Regulator, a, b, insideDiameterMetres, minorLossFactor) with { IsOneWay = true, RegulatedPascals = regulatedPascals };

    /// <summary>A station's valve: its flow coefficient as its stem leaves it, perhaps with a regulator; water lifts it in its direction only.</summary>
    public static PipeElement Valve(string name, int a, int b, FlowCoefficient coefficient, Water water, bool isClosed, double? regulatedPascals = null) =>
        new(name, PipeElementKind.Valve, a, b)
        {
            ResistancePerFlowSquaredFactor = coefficient.ResistancePerFlowSquaredFactor(water),
            IsClosed = isClosed,
            IsOneWay = true,
            RegulatedPascals = regulatedPascals,
        };

    public static PipeElement MasterValve(string name, int a, int b, FlowCoefficient coefficient, Water water, bool isClosed) =>
        Valve(name, a, b, coefficient, water, isClosed) with { Kind = PipeElementKind.MasterValve };

    private static PipeElement Fitting(string name, PipeElementKind kind, int a, int b, double insideDiameterMetres, double minorLossFactor) => new(name, kind, a, b)
    {
        InsideDiameterMetres = insideDiameterMetres,
        ResistancePerFlowSquaredFactor = MinorLoss.ResistancePerFlowSquaredFactor(minorLossFactor, insideDiameterMetres),
    };
}
