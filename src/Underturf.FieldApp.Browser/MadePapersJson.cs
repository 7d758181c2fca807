using System.Text.Json.Serialization;

namespace Underturf.FieldApp.Browser;

/// <summary>How papers travel from the worker to the page.</summary>
[JsonSerializable(typeof(MadePaper[]))]
internal sealed partial class MadePapersJson : JsonSerializerContext;
