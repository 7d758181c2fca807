using Microsoft.AspNetCore.Components;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>The picture beneath the plan: taken from the device, laid, shown or not.</summary>
public sealed partial class GroundPlace
{
    /// <summary>How wide a new picture first lies on the screen, in its pixels.</summary>
    private const double FirstWidthPixels = 320;

    private Backdrop? backdrop;
    private string backdropAddress = "";

    [Inject]
    private IBackdropShelf Backdrops { get; set; } = null!;

    /// <summary>Id of the property.</summary>
    [Parameter]
    public string Property { get; set; } = "";

    private async Task FindBackdropAsync()
    {
        if (await Backdrops.FindAsync(Property, History.Facts.Property?.Name ?? "") is { } found && !left)
        {
            (backdrop, backdropAddress) = found;
            if (Hand.Laying is { Picture: null } asked)
            {
                // Its panel was opened before it was found.
                asked.Picture = backdrop;
                StateHasChanged();
            }

            LayBackdrop();
        }
    }

    private void LayBackdrop()
    {
        if (mapped && !left)
        {
            var shown = Hand.Laying?.Picture ?? backdrop;
            Map.Lay(shown is { Shown: true } && backdropAddress.Length > 0 ? backdropAddress : null, shown?.Fit, Hand.Laying is null);
        }
    }

    private void BeginLaying()
    {
        Hand.Lay(new BackdropHand { Picture = backdrop });
        LayBackdrop();
        Redraw();
    }

    private async Task<Problem?> ChooseBackdropAsync(string input)
    {
        var taken = await Backdrops.TakeAsync(Property, input);
        if (!taken.Succeeded)
        {
            return taken.Problem;
        }

        var (width, height) = taken.Value;
        var middle = Map.Middle();
        Hand.Laying!.Picture = new Backdrop(width, height, PictureFit.Upright(width, height, middle.At, middle.MetresPerPixel * FirstWidthPixels / width));
        var trouble = await Backdrops.KeepAsync(Property, Hand.Laying.Picture);
        await FindBackdropAsync();
        return trouble;
    }

    private async Task KeepBackdropAsync()
    {
        if (Hand.Laying?.Picture is { } picture)
        {
            backdrop = picture;
            LayBackdrop();
            Redraw();
            await Backdrops.KeepAsync(Property, picture);
        }
    }

    private async Task ForgetBackdropAsync()
    {
        await Backdrops.ForgetAsync(Property);
        (backdrop, backdropAddress) = (null, "");
        PutAway();
    }
}
