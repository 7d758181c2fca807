using System.Text.Json.Serialization;
using Underturf.Quantities;

namespace Underturf.FieldApp.Browser;

/// <summary>What the worker says of where something lies, or why that cannot be said.</summary>
internal sealed record FoundPlaces(LocatedThing? Located, Problem? Problem);

/// <summary>How looking for things travels between the page and the worker.</summary>
[JsonSourceGenerationOptions(DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(LocateAsk))]
[JsonSerializable(typeof(FoundPlaces))]
internal sealed partial class FoundPlacesJson : JsonSerializerContext;
