using System.Text.Json.Serialization;

namespace Underturf.FieldApp.Browser;

/// <summary>How a rework travels from the worker to the page.</summary>
[JsonSourceGenerationOptions(DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(PlannedRework))]
internal sealed partial class PlannedReworkJson : JsonSerializerContext;
