using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>What a log lets one say, and what in it could not be used.</summary>
public sealed record OpenedLog(Answers Answers, IReadOnlyList<Problem> Problems);
