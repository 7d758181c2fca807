using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Identification;

/// <summary>What is believed of the ends of one place by all that was noted.</summary>
/// <param name="Before">What was likely before anything was touched at the controller.</param>
/// <param name="Far">What ends of no controller may be.</param>
internal sealed record Named(IReadOnlyList<NotedTouching> Touches, NamingTable Before, NamingBelief Belief, FarParts Far)
{
    public static Named Of(Case matter, Bundle bundle)
    {
        var touches = new TouchFinder(matter, bundle).Find();
        var beforehand = new Beforehand(matter, bundle);
        var (before, far) = (beforehand.Table(), new FarParts(bundle, matter.Book.Naming, beforehand, touches));
        far.Speak(before);
        var table = before.Clone();
        foreach (var touch in touches)
        {
            table.Take(touch.Touching);
        }

        return new Named(touches, before, new NamingBelief(table), far);
    }
}
