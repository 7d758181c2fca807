using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property;

namespace Underturf.Reasoning;

/// <summary>A tie whose point is known, as a distance with its spread.</summary>
/// <param name="From">In words.</param>
/// <param name="Grade">Of the tie and of its mark, the less sure.</param>
internal sealed record UsedTie(Tie Tie, string From, Position At, RangeTo Range, Grade Grade);
