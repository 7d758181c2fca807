namespace Underturf.Networks.Hydraulics;

/// <summary>Which law says how much head a pipe loses, and its one number.</summary>
public readonly record struct Friction
{
    private Friction(bool isDarcyWeisbach, double number)
    {
        IsDarcyWeisbach = isDarcyWeisbach;
        Number = number;
    }

    public bool IsDarcyWeisbach { get; }

    /// <summary>C of Hazen and Williams; null with the other law.</summary>
    public double? SmoothnessFactor => IsDarcyWeisbach ? null : Number;

    /// <summary>C of Hazen and Williams, or the roughness of the wall in metres.</summary>
    internal double Number { get; }

    /// <param name="smoothnessFactor">C: 150 smooth plastic, 100 old iron.</param>
    public static Friction HazenWilliams(double smoothnessFactor) => new(isDarcyWeisbach: false, smoothnessFactor);

    /// <param name="roughnessMetres">Of the wall: 0 to a twentieth of the diameter.</param>
    public static Friction DarcyWeisbach(double roughnessMetres) => new(isDarcyWeisbach: true, roughnessMetres);
}
