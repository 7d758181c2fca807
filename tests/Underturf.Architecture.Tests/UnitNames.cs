using System.Reflection;

namespace Underturf.Architecture;

/// <summary>The words that a double's name holds, and the numbers that have no unit.</summary>
internal static class UnitNames
{
    private static readonly string[] units =
    [
        "Metres", "Feet", "Inches", "Ohms", "Kelvin", "Celsius", "Fahrenheit", "Volts", "Amperes", "Watts", "Hertz", "Henries", "Farads",
        "Siemens", "Radians", "Degrees", "Seconds", "Minutes", "Hours", "Days", "Pascals", "Psi", "Gallons", "Litres", "Kilograms", "Awg", "Gauge",
    ];

    /// <summary>
    /// Numbers without a unit in their name: dimensionless ones, a number beside its unit, the SI value of a quantity, and a phasor, whose unit
    /// is that of whatever holds it.
    /// </summary>
    private static readonly string[] without =
        ["Factor", "Ratio", "Share", "Probability", "Tolerance", "Residual", "Si", "Number", "Phasor.Real", "Phasor.Imaginary", "Phasor.Magnitude", "AcReading.Magnitude"];

    /// <summary>Is the unit in the member's name or in its parameter's?</summary>
    /// <param name="name">"Type.Member" or "Type.Member(parameter)".</param>
    public static bool SaysItsUnit(string name)
    {
        var bare = name.Replace("..ctor(", ".", StringComparison.Ordinal).TrimEnd(')');
        var member = bare[(bare.IndexOf('.', StringComparison.Ordinal) + 1)..];
        return units.Any(unit => member.Contains(unit, StringComparison.OrdinalIgnoreCase))
            || without.Any(word => bare.EndsWith(word, StringComparison.OrdinalIgnoreCase));
    }

    public static IEnumerable<string> PublicDoubles(Assembly room)
    {
        const BindingFlags Declared = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        foreach (var type in room.GetExportedTypes())
        {
            foreach (var property in type.GetProperties(Declared).Where(property => IsDouble(property.PropertyType)))
            {
                yield return $"{type.Name}.{property.Name}";
            }

            var methods = type.GetMethods(Declared).Where(method => !method.IsSpecialName).Cast<MethodBase>().Concat(type.GetConstructors(Declared));
            foreach (var parameter in methods.SelectMany(method => method.GetParameters()).Where(parameter => IsDouble(parameter.ParameterType)))
            {
                yield return $"{type.Name}.{parameter.Member.Name}({parameter.Name})";
            }
        }
    }

    private static bool IsDouble(Type type) => type == typeof(double) || type == typeof(double?) || type == typeof(double[]);
}
