using Underturf.Numerics;

namespace Underturf.Reasoning.Identification;

/// <summary>The next single touch where a touch never errs and nobody has to walk: to compare with what can be proven.</summary>
public static class TouchChoice
{
    /// <param name="shares">How likely each end is each wire.</param>
    /// <returns>The end and the wires that carry it; nothing where every end is known.</returns>
    public static (int End, bool[] Put)? Best(MatchingMarginals shares) => SingleTouch.Best(shares) is { } touch ? (touch.End, touch.Put) : null;
}
