using System.Globalization;
using System.Text.Json;
using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Numbers, quantities and positions.</summary>
public sealed partial class Fields
{
    /// <summary>Farther from the datum than any one property reaches; larger numbers are map coordinates.</summary>
    private const double FarthestMetres = 100_000;

    /// <summary>A whole number that must be there.</summary>
    public int Whole(string name, int least)
    {
        if (Find(name) is null)
        {
            Missing(name, "a whole number");
        }

        return OptionalWhole(name, least) ?? least;
    }

    public int? OptionalWhole(string name, int least)
    {
        if (Find(name) is not { } element)
        {
            return null;
        }

        if (element.ValueKind != JsonValueKind.Number || !element.TryGetInt32(out var number))
        {
            WrongType(name, element, "a whole number without quotes");
            return null;
        }

        if (number < least)
        {
            Wrong(name, $"is {number}", $"Write {least} or more");
        }

        return number;
    }

    /// <summary>A finite number between <paramref name="least"/> and <paramref name="most"/>.</summary>
    public double? OptionalNumber(string name, double least = 0, double most = double.MaxValue)
    {
        if (Find(name) is not { } element || AsNumber(name, element) is not { } number)
        {
            return null;
        }

        if (number < least || number > most)
        {
            var range = most == double.MaxValue ? $"{Plain(least)} or more" : $"from {Plain(least)} to {Plain(most)}";
            Wrong(name, $"is {Plain(number)}", $"Write a number {range}");
        }

        return number;
    }

    public bool? OptionalFlag(string name)
    {
        if (Find(name) is not { } element)
        {
            return null;
        }

        if (element.ValueKind is not (JsonValueKind.True or JsonValueKind.False))
        {
            WrongType(name, element, "true or false without quotes");
        }

        return element.ValueKind == JsonValueKind.True;
    }

    /// <summary>A quantity with its unit, "240 ft"; not below zero, since none of the things described can be.</summary>
    public T? Quantity<T>(string name)
        where T : struct, IQuantity<T> => OptionalText(name) is { } text ? AsQuantity<T>(name, text) : null;

    /// <summary>A height over any one level of the property: where something lies lower than that, the level was chosen too high.</summary>
    public Length? Height(string name) => OptionalText(name) is { } text ? AsQuantity<Length>(name, text, "Take the lowest place as the level that all heights count from, and write the others over it") : null;

    /// <summary>A list of such quantities that must be there and hold at least one.</summary>
    public IReadOnlyList<T> Quantities<T>(string name, string example)
        where T : struct, IQuantity<T>
    {
        var texts = Texts(name);
        if (texts.Count == 0)
        {
            Wrong(name, "is missing or empty", $"Write a list of quantities with their units, for example [\"{example}\"]");
        }

        return [.. texts.Select(text => AsQuantity<T>(name, text)).OfType<T>()];
    }

    private T? AsQuantity<T>(string name, string text, string notNegative = "Write it without the minus sign")
        where T : struct, IQuantity<T>
    {
        if (Take(name, T.Parse(text)) is not { } quantity)
        {
            return null;
        }

        if (quantity.Si < 0)
        {
            Wrong(name, $"is '{Short(text)}', less than nothing", notNegative);
        }

        return quantity;
    }

    /// <summary>As <see cref="Quantity"/>, for a field that must be there.</summary>
    public T NeededQuantity<T>(string name, string example)
        where T : struct, IQuantity<T>
    {
        if (Find(name) is null)
        {
            Missing(name, $"a quantity with its unit, for example \"{example}\"");
        }

        return Quantity<T>(name) ?? default;
    }

    /// <summary>True or false, or the ohms of one that is there.</summary>
    public PumpRelay? PumpRelay(string name)
    {
        if (Find(name) is not { } element)
        {
            return null;
        }

        if (element.ValueKind == JsonValueKind.String)
        {
            return Quantity<Resistance>(name) is { } ohms ? new PumpRelay(true, ohms) : null;
        }

        if (element.ValueKind is not (JsonValueKind.True or JsonValueKind.False))
        {
            WrongType(name, element, "true or false without quotes, or its ohms, for example \"40 ohm\"");
        }

        return new PumpRelay(element.ValueKind == JsonValueKind.True, null);
    }

    public WireSize? Gauge(string name) => OptionalText(name) is { } text ? Take(name, WireSize.Parse(text)) : null;

    /// <summary>What an instrument showed, which must be there.</summary>
    public Shown Shown(string name)
    {
        if (Find(name) is null)
        {
            Missing(name, $"a quantity with its unit, for example \"31.5 ohm\", or \"{ShownText.OverRange}\"");
            return default;
        }

        return OptionalShown(name) ?? default;
    }

    /// <summary>What an instrument showed, where one was used.</summary>
    public Shown? OptionalShown(string name) => OptionalText(name) is { } text ? Take(name, FieldLog.Shown.Parse(text)) : null;

    /// <summary>[east, north] in metres.</summary>
    public Position? Position(string name) => Find(name) is { } element ? AsPosition(name, element) : null;

    /// <summary>A list of positions; empty where the field is absent.</summary>
    public IReadOnlyList<Position> Positions(string name)
    {
        if (Find(name) is not { } list || !IsList(name, list, "a list of positions, for example [[0, 0], [12.5, 3]]"))
        {
            return [];
        }

        return [.. list.EnumerateArray().Select(item => AsPosition(name, item) ?? default)];
    }

    private Position? AsPosition(string name, JsonElement element)
    {
        if (element.ValueKind != JsonValueKind.Array || element.GetArrayLength() != 2)
        {
            WrongType(name, element, "[east, north] in metres from the datum, for example [12.5, -3]");
            return null;
        }

        if (AsNumber(name, element[0]) is not { } east || AsNumber(name, element[1]) is not { } north)
        {
            return null;
        }

        if (Math.Abs(east) > FarthestMetres || Math.Abs(north) > FarthestMetres)
        {
            Wrong(
                name,
                $"is {Short(element.GetRawText())}, more than 100 km away",
                "Write metres east and north of the property's datum, not map coordinates");
        }

        return new Position(east, north);
    }

    private double? AsNumber(string name, JsonElement element)
    {
        if (element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out var number) && double.IsFinite(number))
        {
            return number;
        }

        WrongType(name, element, "a finite number without quotes");
        return null;
    }

    private T? Take<T>(string name, Outcome<T> outcome)
        where T : struct
    {
        if (outcome.Succeeded)
        {
            return outcome.Value;
        }

        Wrong(name, $"is {Short(outcome.Problem!.Place)}, which {outcome.Problem.Reason}", outcome.Problem.Remedy);
        return null;
    }

    private static string Plain(double number) => number.ToString("R", CultureInfo.InvariantCulture);
}
