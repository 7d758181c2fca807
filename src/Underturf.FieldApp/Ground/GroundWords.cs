using System.Globalization;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>What the place Ground calls things, and how it says where they are.</summary>
public static class GroundWords
{
    public const string Controller = "controller";
    public const string Box = "box";
    public const string BoxWithValves = "box with valves";
    public const string Valve = "valve";
    public const string MasterValve = "master valve";
    public const string IsolationValve = "isolation valve";
    public const string PointOfConnection = "point of connection";
    public const string Pipe = "pipe";
    public const string Cable = "cable";
    public const string Other = "other";

    /// <summary>Protected ground of a tree.</summary>
    public const string Roots = "roots";

    /// <summary>What lies on the surface, as the field log names it.</summary>
    public static IReadOnlyList<string> Surfaces { get; } = ["tree", "building", "hardscape", "wall", "bed", "lawn", "water", GroundShape.UtilityMark, Other];

    public static string Surface(string what) => Surfaces.Contains(what) ? what : Other;

    /// <summary>The order of the list beside the map.</summary>
    internal static string[] Groups { get; } = ["Boxes", "Valves", "Controllers", "Shut-off and supply", "Pipes", "Cables", "Surface"];

    internal static string Group(string kind) => kind switch
    {
        Box or BoxWithValves => Groups[0],
        Valve or MasterValve => Groups[1],
        Controller => Groups[2],
        IsolationValve or PointOfConnection => Groups[3],
        Pipe => Groups[4],
        Cable => Groups[5],
        _ => Groups[6],
    };

    /// <summary>A grade as it is said everywhere; an estimate is drawn as what is inferred.</summary>
    public static string Say(Grade grade) => grade switch
    {
        Grade.Measured => "measured",
        Grade.Told => "told",
        Grade.Estimated => "estimated",
        Grade.Inferred => "inferred",
        _ => "unknown",
    };

    /// <summary>A distance in the units of the property's people, to a tenth.</summary>
    public static string Distance(double metres, bool feet) =>
        feet ? $"{Tenth(metres / Units.From(1, "ft"))} ft" : $"{Tenth(metres)} m";

    /// <summary>"12.0 m east, 8.0 m south" of the datum.</summary>
    public static string Where(Position at, bool feet) =>
        $"{Distance(Math.Abs(at.EastMetres), feet)} {(at.EastMetres < 0 ? "west" : "east")}, {Distance(Math.Abs(at.NorthMetres), feet)} {(at.NorthMetres < 0 ? "south" : "north")}";

    private static string Tenth(double number) => number.ToString("0.0", CultureInfo.InvariantCulture);
}
