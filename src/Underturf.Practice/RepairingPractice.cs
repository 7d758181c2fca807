namespace Underturf.Property.Practice;

/// <summary>Minutes as somebody says them who has done it often.</summary>
public sealed record Span(decimal Least, decimal Likely, decimal Most);

/// <summary>Something that is wrong inside a valve, and what cures it.</summary>
/// <param name="Of">For faults of the book the share of them that it is; what is missing to one lies elsewhere than in the valve.</param>
/// <param name="Seen">Chance that one who opens the valve sees it.</param>
/// <param name="Imagined">Chance that he notes it where it is not so.</param>
/// <param name="Coil">Chance that a new coil alone cures it.</param>
/// <param name="Clean">The same of cleaning.</param>
/// <param name="Rebuild">Of changing every part that comes out.</param>
/// <param name="Replace">Of a new valve.</param>
public sealed record CausePractice(string Name, string Source, string Say, IReadOnlyDictionary<string, double> Of, double Seen, double Imagined, double Coil, double Clean, double Rebuild, double Replace);

/// <summary>Ground that a tree needs, by the local rule.</summary>
/// <param name="TrunkFactor">Its radius, in diameters of the trunk.</param>
/// <param name="LeastMetres">No radius is smaller.</param>
/// <param name="NotFor">Words in the name of a tree for which the rule has no meaning.</param>
/// <param name="HandFactor">How much longer digging by hand among roots takes.</param>
/// <param name="AirFactor">The same with air.</param>
/// <param name="AirPrice">Of what it takes.</param>
/// <param name="ArboristMillimetres">Roots from here on are left to an arborist.</param>
/// <param name="ArboristChance">That one of them lies in the way at the trunk; at the edge of the protected ground none does.</param>
/// <param name="ArboristPrice">Of a visit.</param>
public sealed record RootsPractice(string Source, double TrunkFactor, double LeastMetres, IReadOnlyList<string> NotFor, decimal HandFactor, decimal AirFactor, decimal AirPrice, double ArboristMillimetres, double ArboristChance, decimal ArboristPrice);

/// <summary>Paving over a thing.</summary>
/// <param name="ReachMetres">So near to its edge the hole is cut into it.</param>
/// <param name="Minutes">To lift and lay it again.</param>
/// <param name="Price">Of what it takes.</param>
public sealed record PavingPractice(string Source, double ReachMetres, Span Minutes, decimal Price);

/// <summary>A valve that is set elsewhere.</summary>
/// <param name="ClearMetres">From roots and paving.</param>
/// <param name="Minutes">Beside those of a new valve.</param>
/// <param name="Good">Chance that both pipes are met there.</param>
public sealed record MovingPractice(string Source, double ClearMetres, Span Minutes, decimal PipeMetreMinutes, decimal PipeMetrePrice, double Good);

/// <summary>The inside of another valve.</summary>
/// <param name="UnknownFits">Chance that it fits, for each thing that is not known of either.</param>
/// <param name="LeftAs">Words of a state in which a valve is left whose inside may be taken.</param>
/// <param name="InStock">Valves that are at hand.</param>
public sealed record DonorPractice(string Source, Span Minutes, double UnknownFits, IReadOnlyList<string> LeftAs, IReadOnlyList<StockValve> InStock);

/// <summary>A valve at hand whose inside can be used.</summary>
public sealed record StockValve(string Name, double Inches, string? Body, int? Screws, string? Thread);

/// <summary>What a size of valve takes.</summary>
/// <param name="BonnetMillimetres">Across.</param>
/// <param name="PartsFactor">Prices of its parts, of those of the catalogue.</param>
/// <param name="ValvePrice">Of a new one.</param>
/// <param name="FittingsPrice">Of what joins it to the pipes.</param>
public sealed record ValveSizePractice(double Inches, double BonnetMillimetres, decimal PartsFactor, decimal ValvePrice, decimal FittingsPrice);

/// <summary>A part that comes out of a valve.</summary>
/// <param name="For">Repairs that change it: "Coil", "Clean", "Donor", "Rebuild".</param>
public sealed record ValvePart(string Name, int Count, decimal Price, IReadOnlyList<string> For, bool Screws = false);

/// <summary>A waterproof connector.</summary>
/// <param name="LeastSquareMillimetres">Copper that it grips, all conductors together.</param>
/// <param name="CubicCentimetres">Room that it takes, its bends included.</param>
public sealed record ConnectorPractice(string Name, int MostWires, double LeastSquareMillimetres, double MostSquareMillimetres, decimal Price, double CubicCentimetres);

/// <summary>A box to bury.</summary>
public sealed record BoxPractice(string Name, double LengthMillimetres, double WidthMillimetres, double DepthMillimetres, decimal Price);

/// <summary>Rebuilding a box of joints.</summary>
/// <param name="ClearMinutes">To free it of growth and soil.</param>
/// <param name="EndMinutes">For each conductor: tag, free, strip.</param>
/// <param name="JointMinutes">For each joint: remake it.</param>
/// <param name="StationMinutes">For each station: run it and read it.</param>
/// <param name="HouseMinutes">To put all back and close.</param>
/// <param name="BoxMinutes">To set a new box.</param>
/// <param name="SlackMetres">Of each conductor in the box.</param>
/// <param name="ShortEnds">Share of the conductors that have too little and are pieced on.</param>
/// <param name="FillShare">Of the room of a box that joints may take.</param>
/// <param name="OldFails">Chance that a joint that is left goes bad before long.</param>
public sealed record JointPractice(string Source, Span ClearMinutes, Span EndMinutes, Span JointMinutes, Span StationMinutes, Span HouseMinutes, Span BoxMinutes, double SlackMetres, double ShortEnds, double FillShare, double OldFails);

/// <summary>What it takes to repair a valve or a box. Minutes and prices are decimal: their sums are shown and must add up.</summary>
/// <param name="Contingency">Share on top of an estimate.</param>
/// <param name="AgreeAbove">Dearer than this, the owner agrees first.</param>
/// <param name="SureAt">A thing is listed for repair where belief is so sure that it is this.</param>
/// <param name="ReadyMinutes">To lay out the parts.</param>
/// <param name="OpenMinutes">To clear round the bonnet of a valve in a box.</param>
/// <param name="ExposeMinutes">To dig up one that has none.</param>
/// <param name="CoilMinutes">To change a coil.</param>
/// <param name="CleanMinutes">To open, clean and close it.</param>
/// <param name="RebuildMinutes">To change every part that comes out.</param>
/// <param name="ReplaceMinutes">To set a new valve.</param>
/// <param name="ProofMinutes">To flush, let the air out, fill, watch it close and run it under load.</param>
/// <param name="CloseMinutes">To put soil and lid back.</param>
/// <param name="ClearMillimetres">Round each bonnet.</param>
public sealed record RepairingPractice(
    string Source,
    decimal Contingency,
    decimal AgreeAbove,
    double SureAt,
    decimal ReadyMinutes,
    Span OpenMinutes,
    Span ExposeMinutes,
    Span CoilMinutes,
    Span CleanMinutes,
    Span RebuildMinutes,
    Span ReplaceMinutes,
    Span ProofMinutes,
    Span CloseMinutes,
    double ClearMillimetres,
    IReadOnlyList<CausePractice> Causes,
    RootsPractice Roots,
    PavingPractice Paving,
    MovingPractice Moving,
    DonorPractice Donors,
    IReadOnlyList<ValveSizePractice> Sizes,
    IReadOnlyList<ValvePart> Parts,
    IReadOnlyList<ConnectorPractice> Connectors,
    IReadOnlyList<BoxPractice> Boxes,
    JointPractice Joints);
