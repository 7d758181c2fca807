using System.Text.Json;
using System.Text.Json.Serialization;

namespace Underturf.FieldApp;

/// <summary>A picture beneath the plan: a drawing, or a photo from above. It stays on the device and is no fact.</summary>
public sealed record Backdrop(int Width, int Height, PictureFit Fit)
{
    public IReadOnlyList<ControlPoint> Points { get; init; } = [];

    public bool Shown { get; init; } = true;

    /// <summary>Turn and scale are known from the second point on.</summary>
    public bool IsFitted => Points.Count > 1;

    public bool Holds(double across, double down) => across >= 0 && across <= Width && down >= 0 && down <= Height;

    public Backdrop With(IReadOnlyList<ControlPoint> points) => this with { Points = points, Fit = PictureFit.Of(points, Fit) };

    public string Write() => JsonSerializer.Serialize(this, BackdropJson.Default.Backdrop);

    /// <summary>Nothing where it is of another build and cannot be read: the picture is laid again then.</summary>
    public static Backdrop? Read(string text)
    {
        try
        {
            return JsonSerializer.Deserialize(text, BackdropJson.Default.Backdrop);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

/// <summary>How a backdrop is kept.</summary>
[JsonSourceGenerationOptions(IgnoreReadOnlyProperties = true)]
[JsonSerializable(typeof(Backdrop))]
internal sealed partial class BackdropJson : JsonSerializerContext;
