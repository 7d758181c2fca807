using Underturf.Property.Practice;

namespace Underturf.Tests.Reasoning.Water;

/// <summary>What comes in at the point of connection.</summary>
public sealed class SupplyTests
{
    [Fact]
    public void Little_at_rest_and_much_lost_are_two_faults_at_once()
    {
        var question = Orchard.Unpiped().Read("static pressure", "32 psi").Meter("15.0 gpm", "s1").Read("running pressure", "2 psi", "s1").Question("water-supply")!;
        Assert.Equal("supply-weak + way-narrow", question.Explanations[0].Fault);
        Assert.All(new[] { "supply looked into", "way opened" }, r => Assert.Contains(PracticeBook.Default.Repair(r)!.Say, question.Explanations[0].Repair, StringComparison.Ordinal));
        Assert.InRange(question.Explanations.Sum(e => e.Probability), 1 - 1e-9, 1 + 1e-9);
    }

    /// <summary>Valves that hold the pressure themselves: much at rest, nothing misting and the pressure at the outlets as everywhere.</summary>
    [Fact]
    public void Stations_in_order_do_not_say_that_the_street_is()
    {
        var orchard = Orchard.Unpiped().Read("static pressure", "120 psi");
        var alone = Unheld(orchard);
        foreach (var station in new[] { "s1", "s2", "s3", "s4" })
        {
            orchard.Watch(station).Read("outlet pressure", "36 psi", station);
        }

        // With the chance of 0.4 that nothing of it reaches them, no number of stations in order takes away more than the rest.
        Assert.InRange(Unheld(orchard) / alone, 0.35, 0.6);
    }

    private static double Unheld(Orchard orchard) => orchard.Notebook().Water()!.Supply.Where(s => s.Faults.Contains("supply-unheld")).Sum(s => s.Probability);

    [Fact]
    public void A_fault_that_was_mended_is_gone_and_the_other_stays()
    {
        var orchard = Orchard.Unpiped().Read("static pressure", "32 psi").Meter("15.0 gpm", "s1").Read("running pressure", "2 psi", "s1").With(new Underturf.FieldLog.WorkFact { Did = "way opened" }).Read("running pressure", "28 psi", "s1");
        Assert.Equal("supply-weak", orchard.Question("water-supply")!.Explanations[0].Fault);
    }
}
