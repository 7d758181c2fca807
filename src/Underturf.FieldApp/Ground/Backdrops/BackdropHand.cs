using Underturf.FieldLog;

namespace Underturf.FieldApp;

/// <summary>A picture that is being laid beneath the plan: tap a point of it, then where that point is.</summary>
public sealed class BackdropHand
{
    /// <summary>The picture, once one is chosen.</summary>
    public Backdrop? Picture { get; set; }

    /// <summary>The point of the picture that was tapped and waits for its place.</summary>
    public PicturePoint? Waiting { get; set; }

    /// <summary>True where the last tap was beside the picture.</summary>
    public bool Missed { get; set; }

    /// <summary>Where the point that waits lies now.</summary>
    public Position? WaitingAt => Waiting is { } point ? Picture?.Fit.At(point.Across, point.Down) : null;

    /// <summary>Takes in a tap.</summary>
    /// <param name="snapped">What is known at the tap, or the tap itself.</param>
    /// <returns>True where the picture lies otherwise now.</returns>
    public bool Take(GroundTap tap, Position snapped)
    {
        if (Picture is not { } picture)
        {
            return false;
        }

        if (Waiting is { } point)
        {
            Picture = picture.With([.. picture.Points, new ControlPoint(point.Across, point.Down, snapped.EastMetres, snapped.NorthMetres)]);
            Waiting = null;
            return true;
        }

        var (across, down) = picture.Fit.PixelAt(tap.At);
        Missed = !picture.Holds(across, down);
        Waiting = Missed ? null : new PicturePoint(across, down);
        return false;
    }

    /// <summary>Takes back the point that waits, or else the last one that was laid.</summary>
    public void TakeBack()
    {
        if (Waiting is null && Picture is { Points.Count: > 0 } picture)
        {
            Picture = picture.With([.. picture.Points.SkipLast(1)]);
        }

        (Waiting, Missed) = (null, false);
    }
}

/// <summary>A point of a picture, in pixels from its upper left corner.</summary>
public sealed record PicturePoint(double Across, double Down);
