using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Identification;

/// <summary>What is believed of the ends of one place by all that was noted.</summary>
/// <param name="Before">What was likely before anything was touched.</param>
internal sealed record Named(IReadOnlyList<NotedTouching> Touches, NamingTable Before, NamingBelief Belief)
{
    public static Named Of(Case matter, Bundle bundle)
    {
        var touches = new TouchFinder(matter, bundle).Find();
        var before = new Beforehand(matter, bundle).Table();
        var table = before.Clone();
        foreach (var touch in touches)
        {
            table.Take(touch.Touching);
        }

        return new Named(touches, before, new NamingBelief(table));
    }
}
