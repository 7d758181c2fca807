using Underturf.FieldLog;
using Underturf.Papers;
using Underturf.Planning.Repair;
using Underturf.Tests.Planning;

namespace Underturf.Tests.Papers;

public sealed class RepairPaperTests
{
    [Fact]
    public void The_paper_has_the_list_the_estimate_and_a_card_with_parts_steps_cautions_and_what_must_be_seen()
    {
        var notebook = new RepairGround(RepairGround.Tree(11, 26)).Notebook();
        var answers = RepairGround.Sure("open-coil", "1");
        var text = PdfText.All(RepairPaper.Make(new PaperMatter(notebook, answers), RepairPlan.All(notebook, answers)));
        Assert.All(
            ["1 thing wants repair", "Estimate, valve bare", "not to exceed", "Step card", "Before you start", "arborist", "Lay out", "Seal ring of the coil", "Step by step", "Expect:", "Prove zero pressure", "Why this and not another", "Local codes and licensed practice prevail"],
            part => Assert.Contains(part, text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_box_has_its_joints_with_their_connectors_on_its_card()
    {
        var notebook = new RepairGround(new EndFact { Id = "e1", Place = "b2", Label = "end 1", Mates = ["e2"] }, new EndFact { Id = "e2", Place = "b2", Label = "end 2" }).Notebook();
        var plan = RepairPlan.Of(notebook, "box 2", RepairGround.Nothing).Value;
        var text = PdfText.All(PaperSet.Card(notebook, plan).Bytes);
        Assert.All(["Joints", "2 × (18 AWG)", "1 × small waterproof connector", "Nobody noted"], part => Assert.Contains(part, text, StringComparison.Ordinal));
    }
}
