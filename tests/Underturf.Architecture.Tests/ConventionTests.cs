using System.Reflection;
using System.Runtime.CompilerServices;

namespace Underturf.Architecture;

public sealed class ConventionTests
{
    /// <summary>Rooms whose public doubles are physical and so say their unit.</summary>
    public static TheoryData<string> PhysicalRooms => ["Underturf.Quantities", "Underturf.Networks"];

    public static TheoryData<string> ValueRooms =>
        ["Underturf.Quantities", "Underturf.FieldLog", "Underturf.Property", "Underturf.Practice", "Underturf.Answers", "Underturf.Networks", "Underturf.Reasoning", "Underturf.Papers"];

    [Theory]
    [MemberData(nameof(PhysicalRooms))]
    public void A_public_double_says_its_unit_or_is_listed_as_dimensionless(string room) =>
        Assert.Equal("", string.Join('\n', UnitNames.PublicDoubles(Assembly.Load(room)).Where(name => !UnitNames.SaysItsUnit(name))));

    [Theory]
    [MemberData(nameof(ValueRooms))]
    public void A_value_cannot_be_changed_once_made(string room)
    {
        var setters = from type in Assembly.Load(room).GetExportedTypes()
                      from property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
                      let setter = property.GetSetMethod()
                      where setter is not null && property.GetIndexParameters().Length == 0 && !IsInitOnly(setter)
                      select $"{type.Name}.{property.Name}";
        Assert.Empty(setters);
    }

    private static bool IsInitOnly(MethodInfo setter) =>
        setter.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));
}
