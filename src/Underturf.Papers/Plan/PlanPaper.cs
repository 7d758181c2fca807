using System.Xml.Linq;

namespace Underturf.Papers;

/// <summary>The plan: everything with a position, with the places that explanations point to.</summary>
internal static class PlanPaper
{
    public static byte[] Make(PaperMatter matter) => Svg.Bytes(Draw(matter));

    private static XDocument Draw(PaperMatter matter)
    {
        var content = PlanContent.Of(matter);
        var frame = PlanFrame.Of(content.Positions);
        var column = new SheetColumn();
        new PlanLegend(column).Fill(content, matter);
        var band = new TieBand(frame);
        var ties = band.Draw(content, matter);
        var bottom = Math.Max(band.BottomUnits, column.Y);
        return MapSheet.Of(matter, "Plan", PlanLabel.Short(matter.PropertyName), "Plan", bottom, [Map(matter, content, frame), ties, column.Draw("legend")]);
    }

    private static XElement Map(PaperMatter matter, PlanContent content, PlanFrame frame) => content.Positions.Any()
        ? new PlanMap(content, frame, matter.UsesUsUnits).Draw(SuspectPlaces.Of(matter))
        : Svg.Group(
            "map",
            PlanMap.Edge(frame),
            Svg.Text(frame.Left + (frame.Width / 2), frame.Top + (frame.Height / 2), "Nothing has a position yet: note where a box or the controller is.", "none", ("text-anchor", "middle")));
}
