using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.Json;
using Underturf.FieldLog;

namespace Underturf.Tests.FieldLog;

/// <summary>The stored fields of a record, in its order.</summary>
internal static class RecordFields
{
    public static (string Name, bool Required)[] Common => Of(typeof(Fact), typeof(Fact));

    /// <summary>The fields of a kind without those that all have.</summary>
    public static (string Name, bool Required)[] Own(Type type) => Of(type, type);

    private static (string Name, bool Required)[] Of(Type type, Type declaredIn) =>
    [
        .. type.GetProperties().Where(p => p.CanWrite && p.DeclaringType == declaredIn).Select(p =>
            (JsonNamingPolicy.CamelCase.ConvertName(p.Name), p.GetCustomAttribute<RequiredMemberAttribute>() is not null)),
    ];
}
