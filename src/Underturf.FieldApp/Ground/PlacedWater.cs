using System.Globalization;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>What is written where somebody places an isolation valve, a point of connection or a pipe.</summary>
internal static class PlacedWater
{
    public static IReadOnlyList<string> Kinds { get; } = [GroundWords.IsolationValve, GroundWords.PointOfConnection, GroundWords.Pipe];

    /// <summary>Volumes that a water bill counts in.</summary>
    public static IReadOnlyList<Choice> Billed { get; } = [new("1000 gal", "1,000 gal"), new("748 gal", "100 cubic feet"), new("1 m3", "1 m3")];

    /// <summary>What a pipe can end at.</summary>
    public static IReadOnlyList<Choice> Ends(PropertyView view) =>
        [.. Choice.ByName(view.WaterSupplies.Keys, view), .. Choice.ByName(view.IsolationValves.Keys, view), .. Choice.ByName(view.Fittings.Keys, view), .. Choice.ByName(view.Valves.Keys, view)];

    public static Outcome<Fact> Of(PlacingDraft draft, string newId, PropertyView view) => draft.Kind switch
    {
        GroundWords.IsolationValve => new IsolationValveFact { Id = draft.Thing ?? newId, Label = draft.Label, Position = draft.Points[0], Shuts = draft.Joins, Sure = draft.Grade },
        GroundWords.PointOfConnection => Supply(draft, newId),
        _ => Pipe(draft, newId, view),
    };

    private static Outcome<Fact> Supply(PlacingDraft draft, string newId)
    {
        var fact = new WaterSupplyFact { Id = draft.Thing ?? newId, Label = draft.Label, Position = draft.Points[0], Sure = draft.Grade };
        if (draft.Price.Trim().Length == 0 && draft.PriceOf.Length == 0)
        {
            return fact;
        }

        if (!double.TryParse(draft.Price.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var price) || price is not (> 0 and < 1e6))
        {
            return PlacingDraft.Missing("price", "Write what the water costs as digits with a point, for example 4.20, or leave price and volume empty");
        }

        var volume = Units.Parse(draft.PriceOf, Dimension.Volume);
        return volume.Succeeded ? fact with { Price = price, PriceOf = new Volume(volume.Value) } : PlacingDraft.Missing("volume", "Choose the volume that costs this");
    }

    private static Outcome<Fact> Pipe(PlacingDraft draft, string newId, PropertyView view)
    {
        if (draft.Thing is { } known && view.Pipes.TryGetValue(view.Identity.Of(known), out var pipe))
        {
            return new PipeFact { Id = pipe.Id, From = pipe.From, To = pipe.To, Route = [.. draft.Points], Sure = draft.Grade };
        }

        return draft.Joins is [var from, var to]
            ? new PipeFact { Id = newId, From = from, To = to, Route = [.. draft.Points], Sure = draft.Grade }
            : PlacingDraft.Missing("ends", "Choose the two things that the pipe joins");
    }
}
