using System.Text.Json.Serialization;

namespace Underturf.FieldApp.Browser;

/// <summary>How a repair travels from the worker to the page.</summary>
[JsonSourceGenerationOptions(DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(PlannedRepair))]
internal sealed partial class PlannedRepairJson : JsonSerializerContext;
