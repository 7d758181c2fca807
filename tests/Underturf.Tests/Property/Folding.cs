using System.Text.Json;
using Underturf.Numerics;
using Underturf.Property;

namespace Underturf.Tests.Property;

/// <summary>Folds notes and prints the result in full, so that two histories can be compared.</summary>
internal static class Folding
{
    /// <summary>Every thing of every epoch with all its fields.</summary>
    public static string Printed(PropertyHistory history)
    {
        var moments = history.WorkTimes.Prepend(default);
        return string.Join('\n', moments.Select(m => Printed(history.At(m)))) + JsonSerializer.Serialize(Stock.Of(history));
    }

    private static string Printed(PropertyView view) => string.Join('\n',
        JsonSerializer.Serialize(view.Controllers),
        JsonSerializer.Serialize(view.Stations),
        JsonSerializer.Serialize(view.Boxes),
        JsonSerializer.Serialize(view.Valves),
        JsonSerializer.Serialize(view.Coils),
        JsonSerializer.Serialize(view.Ends),
        JsonSerializer.Serialize(view.Splices),
        JsonSerializer.Serialize(view.Cables),
        JsonSerializer.Serialize(view.Ground));

    public static T[] Shuffled<T>(this IEnumerable<T> items, SeededGenerator chance)
    {
        T[] all = [.. items];
        for (var i = all.Length - 1; i > 0; i--)
        {
            var j = chance.NextInt(i + 1);
            (all[i], all[j]) = (all[j], all[i]);
        }

        return all;
    }
}
