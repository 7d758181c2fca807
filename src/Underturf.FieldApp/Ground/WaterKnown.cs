using System.Globalization;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;
using Underturf.Reasoning.Water;

namespace Underturf.FieldApp;

/// <summary>What is known of where water comes in, runs and is shut off, as a card says it.</summary>
internal static class WaterKnown
{
    /// <summary>Nothing where it is none of these.</summary>
    public static (string What, string? Said)[]? Of(string id, PropertyView view, bool feet) =>
        view.IsolationValves.TryGetValue(id, out var isolation) ? Isolation(isolation, view, feet)
        : view.WaterSupplies.TryGetValue(id, out var supply) ? Supply(supply, feet)
        : view.Pipes.TryGetValue(id, out var pipe) ? Pipe(pipe, view, feet)
        : null;

    private static (string What, string? Said)[] Isolation(IsolationValveFact valve, PropertyView view, bool feet) =>
    [
        ("in", valve.Box is { } box ? view.Name(box) : null),
        ("size", Inches(valve.Size)),
        ("height", Height(valve.Elevation, feet)),
        ("shuts off", valve.Shuts.Count == 0 ? null : string.Join(", ", valve.Shuts.Select(view.Name).Order(NaturalOrder.Instance))),
        ("note", valve.Note),
    ];

    private static (string What, string? Said)[] Supply(WaterSupplyFact supply, bool feet) =>
    [
        ("meter", Said(Inches(supply.Meter), Pair(supply.MeterAt, supply.MeterLoss, feet))),
        ("backflow", Said(supply.Backflow, supply.BackflowKind, Inches(supply.BackflowSize), Pair(supply.BackflowAt, supply.BackflowLoss, feet))),
        ("height", Height(supply.Elevation, feet)),
        ("water costs", supply is { Price: { } price, PriceOf: { } volume } ? string.Create(CultureInfo.InvariantCulture, $"{price:0.##} in money for {new WaterSay(feet).Volume(volume.CubicMetres, volume.CubicMetres)}") : null),
        ("note", supply.Note),
    ];

    private static (string What, string? Said)[] Pipe(PipeFact pipe, PropertyView view, bool feet) =>
    [
        ("from", view.Name(pipe.From)),
        ("to", view.Name(pipe.To)),
        ("size", string.Join(", ", new[] { pipe.Size, pipe.Series }.OfType<string>())),
        ("length", pipe.Length is { } length ? GroundWords.Distance(length.Metres, feet) : null),
        ("way", pipe.Route.Count > 1 ? "as traced" : "not traced: drawn straight"),
        ("note", pipe.Note),
    ];

    private static string? Said(params string?[] parts) => string.Join(", ", parts.Where(part => !string.IsNullOrEmpty(part))) is { Length: > 0 } said ? said : null;

    private static string? Pair(Flow? at, Pressure? loss, bool feet) => at is { } flow && loss is { } lost ? $"loses {new WaterSay(feet).Pressure(lost.Pascals)} at {new WaterSay(feet).Flow(flow.CubicMetresPerSecond)}" : null;

    /// <summary>Pipes and valves are called by inches everywhere.</summary>
    private static string? Inches(Length? size) => size is { } length ? string.Create(CultureInfo.InvariantCulture, $"{Units.In(length.Metres, "in"):0.##} in") : null;

    internal static string? Height(Length? height, bool feet) => height is { } metres ? GroundWords.Distance(metres.Metres, feet) : null;
}
