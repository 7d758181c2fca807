using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>What Now says of looking for what is hidden.</summary>
/// <param name="Hidden">How much there is.</param>
/// <param name="Thing">What is looked for; nothing where nobody has begun.</param>
/// <param name="Answer">Where it lies, once that is worked out.</param>
public sealed record LookNow(int Hidden, HiddenName? Thing, LocationAnswer? Answer);
