using System.Text.Json.Serialization;
using Underturf.Planning.Day;
using Underturf.Planning.Repair;
using Underturf.Planning.Rework;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Water;

namespace Underturf.FieldApp.Thinking;

/// <summary>What travels between the page and the worker: both are of one build, so the form is nobody else's concern. Without the faster way of writing, which weighs as much again.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(Problem))]
[JsonSerializable(typeof(OpenedLog))]
[JsonSerializable(typeof(MadePaper[]))]
[JsonSerializable(typeof(Planned<ReworkAnswer>))]
[JsonSerializable(typeof(Planned<RepairAnswer>))]
[JsonSerializable(typeof(FlowLines))]
[JsonSerializable(typeof(DayAsk))]
[JsonSerializable(typeof(PlannedDay))]
[JsonSerializable(typeof(NamingAsk))]
[JsonSerializable(typeof(NamingAnswer))]
[JsonSerializable(typeof(LocateAsk))]
[JsonSerializable(typeof(LocatedThing))]
internal sealed partial class TravelJson : JsonSerializerContext;
