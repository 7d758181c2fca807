namespace Underturf.Networks.Hydraulics;

/// <summary>Fresh water at one temperature and about one atmosphere.</summary>
/// <param name="TemperatureKelvins">Between freezing and boiling.</param>
public readonly record struct Water(double TemperatureKelvins)
{
    /// <summary>Standard gravity (exact by definition).</summary>
    public const double GravityMetresPerSecondSquared = 9.80665;

    /// <summary>
    /// rho = (999.83952 + 16.945176 t - 7.9870401e-3 t^2 - 46.170461e-6 t^3 + 105.56302e-9 t^4 - 280.54253e-12 t^5) / (1 + 16.879850e-3 t), t
    /// in C (Kell, Journal of Chemical and Engineering Data 20(1), 1975; from memory). 0 to 100 C, within 0.01 %.
    /// </summary>
    public double DensityKilogramsPerCubicMetre
    {
        get
        {
            var t = TemperatureKelvins - 273.15;
            var above = 999.83952 + (t * (16.945176 + (t * (-7.9870401e-3 + (t * (-46.170461e-6 + (t * (105.56302e-9 - (t * 280.54253e-12)))))))));
            return above / (1 + (16.879850e-3 * t));
        }
    }

    /// <summary>
    /// mu = 1e-6 Pa s (280.68 T^-1.9 + 511.45 T^-7.7 + 61.131 T^-19.6 + 0.45903 T^-40), T in 300 K (IAPWS, supplementary release on liquid
    /// water at 0.1 MPa, 2008; from memory). 0 to 100 C, within 1 %.
    /// </summary>
    public double ViscosityPascalSeconds
    {
        get
        {
            var t = TemperatureKelvins / 300;
            return 1e-6 * ((280.68 * Math.Pow(t, -1.9)) + (511.45 * Math.Pow(t, -7.7)) + (61.131 * Math.Pow(t, -19.6)) + (0.45903 * Math.Pow(t, -40)));
        }
    }

    /// <summary>nu = mu / rho.</summary>
    public double KinematicViscositySquareMetresPerSecond => ViscosityPascalSeconds / DensityKilogramsPerCubicMetre;

    /// <summary>rho g: pascals that each metre of water weighs.</summary>
    public double PascalsPerMetre => DensityKilogramsPerCubicMetre * GravityMetresPerSecondSquared;
}
