using System.Text.Json;
using Underturf.Property.Practice;
using Underturf.Simulation;
using Underturf.Simulation.Trials;

namespace Underturf.Tests.Simulation.Trials;

public sealed class TrialTests
{
    /// <summary>Of a tuning property with an open coil and a parted splice.</summary>
    private const ulong Seed = 6508;

    private static readonly PracticeBook Book = PracticeBook.Default;
    private static readonly WorldShape Shape = WorldShape.Trial(null, null);
    private static readonly Lazy<TrialResult> Worked = new(() => Work(Seed));

    [Fact]
    public void A_trial_is_the_same_for_the_same_seed() =>
        Assert.Equal(TrialJson.Write([Worked.Value], Book), TrialJson.Write([Work(Seed)], Book));

    [Fact]
    public void A_technician_who_follows_the_notebook_mends_what_was_complained_of_and_nothing_stays_open()
    {
        var trial = Worked.Value;
        Assert.Equal(TrialEnd.NothingOpen, trial.End);
        Assert.Equal(2, trial.AskedAbout);
        Assert.Equal(0, trial.LeftOpen);
        Assert.Empty(trial.StillOpen);
        Assert.Equal(2, trial.Steps.Count(s => s.Deed == TrialDeed.Repair));
        Assert.Equal(trial.Steps.Count(s => s.Deed == TrialDeed.Repair), trial.Steps.Count(s => s.Deed == TrialDeed.Proof));
    }

    [Fact]
    public void The_minutes_of_a_trial_are_those_of_its_steps()
    {
        var trial = Worked.Value;
        Assert.Equal(trial.Steps.Sum(s => s.Minutes + s.WalkMinutes), trial.WorkedMinutes, 1e-9);
        Assert.Equal(trial.WorkedMinutes, trial.WalkMinutes + trial.MoveMinutes + trial.RepairMinutes, 1e-9);
        Assert.Equal(trial.WorkedMinutes + (Book.Loss.WrongRepairMinutes * trial.WrongRepairs), trial.LossMinutes(Book), 1e-9);
    }

    [Fact]
    public void What_is_left_and_what_was_repaired_wrongly_is_charged()
    {
        TrialStep[] steps =
        [
            new("look", "box 1", 2, 12, "nothing odd"),
            new("remake the splice", "box 1", 0, 25, string.Empty) { Deed = TrialDeed.WrongRepair },
            new("mend the conductor", "box 2", 1, 75, string.Empty) { Deed = TrialDeed.Repair },
            new("run it", "controller", 3, 5, string.Empty) { Deed = TrialDeed.Proof },
        ];
        var trial = new TrialResult(1, "by hand", TrialEnd.Limit, steps, 2, 1, []) { Truth = [], Left = [], StillOpen = [] };
        Assert.Equal(123, trial.WorkedMinutes);
        Assert.Equal(123 + (2 * Book.Loss.WrongRepairMinutes), trial.LossMinutes(Book));
        Assert.Equal(43 + (2 * Book.Loss.WrongRepairMinutes), trial.SearchMinutes(Book));
    }

    [Fact]
    public void The_first_visit_of_a_trial_runs_and_sweeps_every_station_and_no_more()
    {
        var world = WorldGenerator.Make(Seed, Book, Shape);
        var kinds = world.Log.Standing.Select(e => e.Fact).OfType<Underturf.FieldLog.ReadingFact>().Select(r => r.How).Distinct().Order();
        Assert.Equal(["idle volts", "station ohms"], kinds);
        Assert.Equal(world.Truth!.Paths.Count, world.Log.Standing.Count(e => e.Fact is Underturf.FieldLog.TestFact));
    }

    [Fact]
    public void The_JSON_of_a_trial_names_its_end_and_its_steps()
    {
        using var json = JsonDocument.Parse(TrialJson.Write([Worked.Value], Book));
        var trial = json.RootElement[0].GetProperty("trial");
        Assert.Equal("NothingOpen", trial.GetProperty("end").GetString());
        Assert.Equal(Worked.Value.Steps.Count, trial.GetProperty("steps").GetArrayLength());
    }

    private static TrialResult Work(ulong seed) => TrialStudy.One(seed, Shape, Book, [Trial.PolicyNames[0]])[0];
}
