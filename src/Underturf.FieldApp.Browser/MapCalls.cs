using System.Runtime.InteropServices.JavaScript;

namespace Underturf.FieldApp.Browser;

/// <summary>The page's side of the map (map/ground-map.js, bundled by the build into wwwroot/js).</summary>
internal static partial class MapCalls
{
    private const string Module = "ground-map";

    /// <summary>Fetched when Ground is opened for the first time: who never looks at the map does not wait for it.</summary>
    public static Task ReadyAsync() => JSHost.ImportAsync(Module, "../js/ground-map.js");

    [JSImport("open", Module)]
    public static partial void Open(string element, string of, bool feet, [JSMarshalAs<JSType.Function<JSType.Number, JSType.Number, JSType.Number>>] Action<double, double, double> tapped);

    [JSImport("draw", Module)]
    public static partial void Draw(string[] kinds, string[] grades, string[] names, string[] forms, int[] counts, double[] metres, double[] extent);

    [JSImport("mark", Module)]
    public static partial void Mark(string[] nexts, string[] labels, int[] counts, double[] metres);

    [JSImport("tie", Module)]
    public static partial void Tie(string[] grades, string[] labels, int[] counts, double[] metres);

    [JSImport("lay", Module)]
    public static partial void Lay(string? address, double[] fit, bool beneath);

    [JSImport("here", Module)]
    public static partial void Here(double east, double north, double accuracy);

    [JSImport("heat", Module)]
    public static partial void Heat(byte[] picture, double[] lies);

    [JSImport("route", Module)]
    public static partial void Route(double[] metres, bool turns);

    [JSImport("choose", Module)]
    public static partial void Choose(int index);

    [JSImport("sketch", Module)]
    public static partial void Sketch(double[] metres, bool closed, string label);

    [JSImport("middle", Module)]
    [return: JSMarshalAs<JSType.Array<JSType.Number>>]
    public static partial double[] Middle();

    [JSImport("zoom", Module)]
    public static partial void Zoom(int steps);

    [JSImport("showWhole", Module)]
    public static partial void ShowWhole();

    [JSImport("close", Module)]
    public static partial void Close();
}
