using System.Text.Encodings.Web;
using System.Text.Json;
using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Writes the fields of one body. What says nothing (absent, empty list, false) is left out.</summary>
public sealed class BodyWriter
{
    /// <summary>Lines are files, not web pages: letters such as Ω and ° stay readable.</summary>
    internal static readonly JsonWriterOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly Utf8JsonWriter json;

    internal BodyWriter(Utf8JsonWriter json) => this.json = json;

    public void Text(string name, string? text)
    {
        if (text is not null)
        {
            json.WriteString(name, text);
        }
    }

    public void Time(string name, DateTimeOffset? moment) => Text(name, moment is { } at ? MomentText.Write(at) : null);

    public void Texts(string name, IReadOnlyList<string> texts)
    {
        if (texts.Count > 0)
        {
            json.WriteStartArray(name);
            foreach (var text in texts)
            {
                json.WriteStringValue(text);
            }

            json.WriteEndArray();
        }
    }

    public void Whole(string name, int? number)
    {
        if (number is { } value)
        {
            json.WriteNumber(name, value);
        }
    }

    public void Number(string name, double? number)
    {
        if (number is { } value)
        {
            json.WritePropertyName(name);
            Number(value);
        }
    }

    /// <summary>Only true is worth a field: false is what absence means.</summary>
    public void Flag(string name, bool flag)
    {
        if (flag)
        {
            json.WriteBoolean(name, flag);
        }
    }

    public void OptionalFlag(string name, bool? flag)
    {
        if (flag is { } value)
        {
            json.WriteBoolean(name, value);
        }
    }

    public void Quantity<T>(string name, T? quantity)
        where T : struct, IQuantity<T> => Text(name, quantity is { } value ? QuantityText.Write(value.Si, T.Dimension) : null);

    public void Quantities<T>(string name, IReadOnlyList<T> quantities)
        where T : struct, IQuantity<T> => Texts(name, [.. quantities.Select(quantity => QuantityText.Write(quantity.Si, T.Dimension))]);

    public void Gauge(string name, WireSize? gauge) => Text(name, gauge is { } value ? QuantityText.Write(value) : null);

    /// <summary>The ohms where they are known, else whether there is one.</summary>
    public void PumpRelay(string name, PumpRelay? relay)
    {
        Quantity(name, relay?.Ohms);
        OptionalFlag(name, relay is { Ohms: null } bare ? bare.Fitted : null);
    }

    public void Shown(string name, Shown shown) => Text(name, ShownText.Write(shown));

    public void OptionalShown(string name, Shown? shown) => Text(name, shown is { } value ? ShownText.Write(value) : null);

    public void Position(string name, Position? position)
    {
        if (position is { } value)
        {
            json.WritePropertyName(name);
            Position(value);
        }
    }

    public void Positions(string name, IReadOnlyList<Position> positions)
    {
        if (positions.Count > 0)
        {
            json.WriteStartArray(name);
            foreach (var position in positions)
            {
                Position(position);
            }

            json.WriteEndArray();
        }
    }

    private void Position(Position position)
    {
        json.WriteStartArray();
        Number(position.EastMetres);
        Number(position.NorthMetres);
        json.WriteEndArray();
    }

    /// <summary>JSON has no word for infinity: it is written as text, which reading then refuses with the field's name.</summary>
    private void Number(double value)
    {
        if (double.IsFinite(value))
        {
            json.WriteNumberValue(value);
        }
        else
        {
            json.WriteStringValue(value.ToString("R", System.Globalization.CultureInfo.InvariantCulture));
        }
    }
}
