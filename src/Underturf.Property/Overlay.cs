using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>
/// Two notes about one thing made one: what the newer leaves out is kept from the older. The grade is the newer's where it says more
/// than the id.
/// </summary>
internal static class Overlay
{
    public static PropertyFact Of(PropertyFact older, PropertyFact newer) => newer with
    {
        Latitude = newer.Latitude ?? older.Latitude,
        Longitude = newer.Longitude ?? older.Longitude,
        Area = newer.Area ?? older.Area,
    };

    public static ControllerFact Of(ControllerFact older, ControllerFact newer) => newer with
    {
        Label = newer.Label ?? older.Label,
        Position = newer.Position ?? older.Position,
        Supply = newer.Supply ?? older.Supply,
        Rated = newer.Rated ?? older.Rated,
        Frequency = newer.Frequency ?? older.Frequency,
        Master = newer.Master ?? older.Master,
        PumpRelay = newer.PumpRelay ?? older.PumpRelay,
        Sensor = newer.Sensor ?? older.Sensor,
    };

    public static StationFact Of(StationFact older, StationFact newer) => newer with
    {
        Label = newer.Label ?? older.Label,
        Waters = newer.Waters.Count > 0 ? newer.Waters : older.Waters,
        Minutes = newer.Minutes ?? older.Minutes,
        Common = newer.Common ?? older.Common,
    };

    public static BoxFact Of(BoxFact older, BoxFact newer) => newer with
    {
        Label = newer.Label ?? older.Label,
        Position = newer.Position ?? older.Position,
        Size = newer.Size ?? older.Size,
    };

    public static ValveFact Of(ValveFact older, ValveFact newer) => newer with
    {
        Label = newer.Label ?? older.Label,
        Box = newer.Box ?? older.Box,
        Position = newer.Position ?? older.Position,
        Station = newer.Station ?? older.Station,
        Size = newer.Size ?? older.Size,
        Elevation = newer.Elevation ?? older.Elevation,
        Body = newer.Body ?? older.Body,
        Screws = newer.Screws ?? older.Screws,
        Thread = newer.Thread ?? older.Thread,
        Waters = newer.Waters ?? older.Waters,
        Make = newer.Make ?? older.Make,
    };

    public static CoilFact Of(CoilFact older, CoilFact newer) => newer with
    {
        Ohms = newer.Ohms ?? older.Ohms,
        Make = newer.Make ?? older.Make,
    };

    public static EndFact Of(EndFact older, EndFact newer) => newer with
    {
        Label = newer.Label ?? older.Label,
        Colour = newer.Colour ?? older.Colour,
        Gauge = newer.Gauge ?? older.Gauge,
        Mates = newer.Mates.Count > 0 ? newer.Mates : older.Mates,
        FarEnd = newer.FarEnd ?? older.FarEnd,
        Cable = newer.Cable ?? older.Cable,
        Station = newer.Station ?? older.Station,
        Common = newer.Common ?? older.Common,
    };

    public static SpliceFact Of(SpliceFact older, SpliceFact newer) => newer with
    {
        Joins = newer.Joins.Count > 0 ? newer.Joins : older.Joins,
        Connector = newer.Connector ?? older.Connector,
    };

    public static CableFact Of(CableFact older, CableFact newer) => newer with
    {
        Length = newer.Length ?? older.Length,
        Gauge = newer.Gauge ?? older.Gauge,
        CommonGauge = newer.CommonGauge ?? older.CommonGauge,
        Conductors = newer.Conductors ?? older.Conductors,
        Carries = newer.Carries.Count > 0 ? newer.Carries : older.Carries,
        Route = newer.Route.Count > 0 ? newer.Route : older.Route,
    };

    public static GroundFact Of(GroundFact older, GroundFact newer) => newer with
    {
        Label = newer.Label ?? older.Label,
        Trunk = newer.Trunk ?? older.Trunk,
    };

    public static PhotoFact Of(PhotoFact older, PhotoFact newer) => newer with
    {
        Width = newer.Width ?? older.Width,
        Height = newer.Height ?? older.Height,
        Place = newer.Place ?? older.Place,
        About = newer.About ?? older.About,
        Caption = newer.Caption ?? older.Caption,
    };

    public static SoughtFact Of(SoughtFact older, SoughtFact newer) => newer with
    {
        Label = newer.Label ?? older.Label,
        Station = newer.Station ?? older.Station,
        Cable = newer.Cable ?? older.Cable,
    };

    public static SpotFact Of(SpotFact older, SpotFact newer) => newer with
    {
        Label = newer.Label ?? older.Label,
        Beside = newer.Beside.Count > 0 ? newer.Beside : older.Beside,
        Line = newer.Line ?? older.Line,
        Along = newer.Along ?? older.Along,
        Across = newer.Across ?? older.Across,
    };

    public static WaterSupplyFact Of(WaterSupplyFact older, WaterSupplyFact newer) => newer with
    {
        Label = newer.Label ?? older.Label,
        Position = newer.Position ?? older.Position,
        Elevation = newer.Elevation ?? older.Elevation,
        Meter = newer.Meter ?? older.Meter,
        MeterAt = newer.MeterAt ?? older.MeterAt,
        MeterLoss = newer.MeterLoss ?? older.MeterLoss,
        Backflow = newer.Backflow ?? older.Backflow,
        BackflowKind = newer.BackflowKind ?? older.BackflowKind,
        BackflowSize = newer.BackflowSize ?? older.BackflowSize,
        BackflowAt = newer.BackflowAt ?? older.BackflowAt,
        BackflowLoss = newer.BackflowLoss ?? older.BackflowLoss,
        Price = newer.Price ?? older.Price,
        PriceOf = newer.PriceOf ?? older.PriceOf,
    };

    public static FittingFact Of(FittingFact older, FittingFact newer) => newer with
    {
        Label = newer.Label ?? older.Label,
        Position = newer.Position ?? older.Position,
        Elevation = newer.Elevation ?? older.Elevation,
    };

    public static PipeFact Of(PipeFact older, PipeFact newer) => newer with
    {
        Length = newer.Length ?? older.Length,
        Series = newer.Series ?? older.Series,
        Size = newer.Size ?? older.Size,
        Inside = newer.Inside ?? older.Inside,
        Route = newer.Route.Count > 0 ? newer.Route : older.Route,
    };

    public static IsolationValveFact Of(IsolationValveFact older, IsolationValveFact newer) => newer with
    {
        Label = newer.Label ?? older.Label,
        Position = newer.Position ?? older.Position,
        Elevation = newer.Elevation ?? older.Elevation,
        Box = newer.Box ?? older.Box,
        Size = newer.Size ?? older.Size,
        Shuts = newer.Shuts.Count > 0 ? newer.Shuts : older.Shuts,
    };

    public static OutletFact Of(OutletFact older, OutletFact newer) => newer with
    {
        Flow = newer.Flow ?? older.Flow,
        Pressure = newer.Pressure ?? older.Pressure,
        Fitting = newer.Fitting ?? older.Fitting,
        Elevation = newer.Elevation ?? older.Elevation,
    };

    public static LocateTicketFact Of(LocateTicketFact older, LocateTicketFact newer) => newer with
    {
        Number = newer.Number ?? older.Number,
        Places = newer.Places.Count > 0 ? newer.Places : older.Places,
        Area = newer.Area.Count > 0 ? newer.Area : older.Area,
        From = newer.From ?? older.From,
        Expires = newer.Expires ?? older.Expires,
        Marked = [.. older.Marked.Union(newer.Marked)],
        Clear = [.. older.Clear.Union(newer.Clear)],
    };

    public static ApprovalFact Of(ApprovalFact older, ApprovalFact newer) => newer with { What = newer.What ?? older.What };

    public static PartsFact Of(PartsFact older, PartsFact newer) => newer with { What = newer.What ?? older.What, Due = newer.Due ?? older.Due };
}
