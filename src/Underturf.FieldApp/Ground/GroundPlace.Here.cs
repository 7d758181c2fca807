using Microsoft.AspNetCore.Components;
using Underturf.FieldLog;

namespace Underturf.FieldApp;

/// <summary>Where the device says it is: a hint on the plan, never a fact.</summary>
public sealed partial class GroundPlace
{
    /// <summary>Farther off the plan than any property reaches, the datum or the device is wrong.</summary>
    private const double FarMetres = 20_000;

    private string? here;
    private bool asking;

    [Inject]
    private IWhereabouts Whereabouts { get; set; } = null!;

    private async Task ShowHereAsync()
    {
        // Without a datum nobody needs to be asked for leave.
        if (DatumPlane.At(new Fix(0, 0, 0), History.Facts.Property).Problem is { } missing)
        {
            here = $"{missing.Place[..1].ToUpperInvariant()}{missing.Place[1..]} {missing.Reason}. {missing.Remedy}.";
            return;
        }

        asking = true;
        var found = await Whereabouts.FindAsync();
        asking = false;
        here = found.Succeeded ? Show(found.Value) : $"Your position is not shown: {found.Problem!.Reason}. {found.Problem.Remedy}.";
    }

    private string Show(Fix fix)
    {
        var at = DatumPlane.At(fix, History.Facts.Property).Value;
        if (at.DistanceMetresTo(new Position(0, 0)) > FarMetres)
        {
            return "Your position is not shown: the device says that it is far from this property.";
        }

        if (mapped && !left)
        {
            Map.Here(at, fix.AccuracyMetres);
        }

        return $"You are about here, to {GroundWords.Distance(fix.AccuracyMetres, Feet)}: a hint; ties are for truth.";
    }
}
