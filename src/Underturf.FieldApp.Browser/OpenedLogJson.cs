using System.Text.Json.Serialization;

namespace Underturf.FieldApp.Browser;

/// <summary>How answers travel from the worker to the page: both are of one build, so the form is nobody else's concern.</summary>
[JsonSourceGenerationOptions(DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(OpenedLog))]
internal sealed partial class OpenedLogJson : JsonSerializerContext;
