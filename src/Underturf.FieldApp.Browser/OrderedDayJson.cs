using System.Text.Json.Serialization;
using Underturf.Planning.Day;
using Underturf.Quantities;

namespace Underturf.FieldApp.Browser;

/// <summary>An ordered day, or why there is none.</summary>
internal sealed record OrderedDay(PlannedDay? Planned, Problem? Problem);

/// <summary>How a day travels from the worker to the page, and what is asked of it.</summary>
[JsonSourceGenerationOptions(DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(OrderedDay))]
[JsonSerializable(typeof(DayAsk))]
internal sealed partial class OrderedDayJson : JsonSerializerContext;
