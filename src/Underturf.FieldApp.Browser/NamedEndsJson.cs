using System.Text.Json.Serialization;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.FieldApp.Browser;

/// <summary>What the worker says of the ends of a place: which wires they are, or why that cannot be said.</summary>
internal sealed record NamedEnds(NamingAnswer? Answer, Problem? Problem);

/// <summary>How naming travels between the page and the worker.</summary>
[JsonSourceGenerationOptions(DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(NamingAsk))]
[JsonSerializable(typeof(NamedEnds))]
internal sealed partial class NamedEndsJson : JsonSerializerContext;
