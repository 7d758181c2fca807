using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Cli;

/// <summary>The controllers as a table: what their plates say, and what is on with every station.</summary>
internal static class ControllerText
{
    public static string Write(PropertyView view) => TextTable.Of(
        ["controller", "terminals", "supply", "rated", "master valve", "pump relay", "sensor", "grade"],
        view.Controllers.OrderBy(c => c.Key, NaturalOrder.Instance).Select(c => Row(view, c.Key, c.Value)));

    private static string[] Row(PropertyView view, string id, ControllerFact controller) =>
    [
        view.Name(id), controller.Terminals.ToString(), Supply(controller), controller.Rated is { } rated ? $"{rated.VoltAmperes:0} VA" : "unknown",
        controller.Master is { } master ? view.Name(master) : "not noted", Relay(controller.PumpRelay), controller.Sensor ?? "not noted",
        controller.Sure.ToString().ToLowerInvariant(),
    ];

    private static string Supply(ControllerFact controller) => controller.Supply is not { } supply ? "unknown"
        : Say.Figure(supply.Volts, Dimension.Voltage) + (controller.Frequency is { } frequency ? $", {frequency.Hertz:0.#} Hz" : string.Empty);

    private static string Relay(PumpRelay? relay) => relay switch
    {
        null => "not noted",
        { Fitted: false } => "none",
        { Ohms: { } noted } => Say.Figure(noted.Ohms, Dimension.Resistance),
        _ => "fitted",
    };
}
