using Underturf.FieldLog;

namespace Underturf.FieldApp;

/// <summary>A map in local metres that a host draws: it shows what it is told, and tells where it was tapped.</summary>
public interface IGroundMap
{
    /// <summary>Fetches what draws the map, once.</summary>
    Task ReadyAsync();

    /// <summary>Opens a map in an element of the page, in place of one that is open.</summary>
    /// <param name="of">The property: where its map stood is kept for the next time.</param>
    /// <param name="feet">Whether its scale is in feet.</param>
    void Open(string element, string of, bool feet, Action<GroundTap> tapped);

    /// <summary>Draws a plan in place of the one before.</summary>
    void Draw(GroundPlan plan);

    /// <summary>Marks places that the thinking points to, in place of those before.</summary>
    void Mark(IReadOnlyList<GroundSign> signs);

    /// <summary>Draws taped distances, in place of those before.</summary>
    void Tie(IReadOnlyList<GroundTie> ties);

    /// <summary>Lays a picture beneath the plan, in place of one before.</summary>
    /// <param name="address">Of the picture; nothing for none.</param>
    /// <param name="beneath">False while it is being laid: then it shines through on the plan.</param>
    void Lay(string? address, PictureFit? fit, bool beneath);

    /// <summary>Shows where the device says it is, and the circle in which it may be, and brings it into sight.</summary>
    void Here(Position at, double accuracyMetres);

    /// <summary>Lays likely ground over the plan, in place of what lay there; nothing takes it away.</summary>
    void Heat(HeatLayer? heat);

    /// <summary>Draws the stops of a search in their order, in place of those before.</summary>
    /// <param name="turns">Whether the map turns to them.</param>
    void Route(IReadOnlyList<Position> stops, bool turns);

    /// <summary>Rings a thing of the plan by its number there; none below zero.</summary>
    void Choose(int number);

    /// <summary>Draws what is being placed or measured, with what is to be said of it.</summary>
    void Sketch(IReadOnlyList<Position> points, bool closed, string words);

    /// <summary>What a tap in the middle would tell: how a keyboard points.</summary>
    GroundTap Middle();

    /// <summary>Nearer by a factor of two for each step; farther where it is negative.</summary>
    void Zoom(int steps);

    void ShowWhole();

    /// <summary>Takes the map off the page.</summary>
    void Close();
}
