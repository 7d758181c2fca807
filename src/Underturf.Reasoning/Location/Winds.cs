namespace Underturf.Reasoning;

/// <summary>The eight directions in words.</summary>
internal static class Winds
{
    private static readonly string[] names = ["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"];

    /// <summary>"north-east" of where one has gone so far to the east and to the north.</summary>
    public static string Of(double east, double north) => names[(int)Math.Round((Math.Atan2(east, north) / (Math.Tau / names.Length)) + names.Length) % names.Length];
}
