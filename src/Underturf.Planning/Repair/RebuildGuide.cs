using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Planning.Repair;

/// <summary>A step of a rebuild in words: what to do, and what can hurt while it is done.</summary>
public sealed record RebuildGuide(string Title, string Says, string Caution)
{
    public static RebuildGuide Of(RebuildStep step) => step switch
    {
        RebuildStep.Clear => new(
            "Clear",
            "Cut growth back and lift the soil out until the rim and every splice lie bare.",
            "Have utilities marked and wait the legal notice; private lines are not marked. Hand-dig near marks and roots; ask an arborist about large ones."),
        RebuildStep.Photograph => new(
            "Photograph",
            "One picture from above before anything moves, then one of each side.",
            ""),
        RebuildStep.Tag => new(
            "Tag",
            "Tag every conductor on both sides of its joint with the name on this card, before anything is cut.",
            "Power off at the controller. An unknown conductor may be mains or lighting: measure volts before you touch it."),
        RebuildStep.Free => new(
            "Free, one at a time",
            "Free one conductor, lay it out along its way in, then take the next.",
            "Power off. No ohmmeter on a live wire. Cut nothing that has no tag. No hands in water near a conductor that was not measured."),
        RebuildStep.Remake => new(
            "Remake",
            "Waterproof connectors for this number and gauge of conductors, with slack to lift each joint out of the box.",
            PracticeBook.Default.Repair(BoxRebuild.Remaking)?.Caution ?? ""),
        RebuildStep.Retest => new(
            "Retest under load",
            "Run each station that passes here and read it while it runs.",
            "No hands in the box while it is energised. People clear of the outlets. The supply side of the controller holds mains: keep out."),
        _ => new(
            "House",
            "Joints high and apart, tags readable, lid level and closed, no hole left open.",
            "A deep hole caves in: fill it or cover it before you turn away."),
    };
}
