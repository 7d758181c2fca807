using Underturf.FieldLog;
using Underturf.Planning.Repair;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Tests.Planning;

public sealed class RepairPlanTests
{
    private static readonly Answers DeadCoil = RepairGround.Sure("open-coil", "1");
    private static readonly Answers Running = RepairGround.Sure("valve-not-closing", "1");

    /// <summary>
    /// Worked by hand with the default book at 85.00 an hour, a coil that is surely dead, a bare 1 in valve at the meter: 10 min ready 14.17; 3 min to shut 4.25;
    /// (15 + 4 x 30 + 60) / 6 = 32.5 min to dig it up 46.04; (10 + 4 x 15 + 25) / 6 = 15.8 min for the coil 22.38, its parts 21.00 + 6.50 + 0.90 + 2 x 2.60 = 33.60;
    /// 20.8 min of proof 29.47; 10.8 min of soil 15.30. Together 92.9 min, 131.61 and 33.60: 165.21. Spread: √(7.5² + 2.5² + 2.5² + 2.5²) = 8.7 min.
    /// It is the coil with 0.97 and a new one cures it with 0.97: 0.9409. Else the rebuild at the open hole, 63.75 + 70.30 + 29.47 = 163.52, which then cures
    /// 0.4825; else a new valve, 255.00 + 59.20 + 29.47 = 343.67, which then cures 0.0187; else a wrong repair, 150 min, 212.50. So 165.21 + 26.55 = 191.76.
    /// </summary>
    [Fact]
    public void A_new_coil_for_a_dead_one_costs_what_was_worked_out_by_hand()
    {
        var plan = new RepairGround().Plan("bare", DeadCoil);
        Assert.Equal(RepairKind.Coil, plan.Choice.Kind);
        Assert.Equal([14.17m, 4.25m, 46.04m, 22.38m, 29.47m, 15.30m], plan.Choice.Cost.Lines.Select(l => l.Work));
        Assert.Equal((92.9m, 131.61m, 33.60m, 165.21m), (plan.Choice.Cost.Minutes, plan.Choice.Cost.Work, plan.Choice.Cost.Parts, plan.Choice.Cost.Price));
        Assert.Equal((8.7m, 12.33m), (plan.Choice.SpreadMinutes, plan.Choice.SpreadPrice));
        Assert.Equal(0.9409, plan.Choice.Cures, 1e-9);
        Assert.Equal(191.76m, plan.Choice.Expected);
        Assert.Equal((24.78m, 189.99m), (plan.Estimate.Contingency, plan.Estimate.Total));
    }

    [Theory]
    [InlineData("open-coil", RepairKind.Coil)]
    [InlineData("valve-not-closing", RepairKind.Rebuild)]
    public void What_is_wrong_decides_what_is_done_and_the_runner_up_is_said(string fault, RepairKind kind)
    {
        var plan = new RepairGround().Plan("bare", RepairGround.Sure(fault, "1"));
        Assert.Equal(kind, plan.Choice.Kind);
        Assert.True(plan.RunnerUp!.Expected >= plan.Choice.Expected);
        Assert.All(plan.Options, o => Assert.Equal(o.Cost.Lines.Sum(l => l.Work + l.Parts), o.Cost.Price));
        Assert.All(plan.Options, o => Assert.Equal(o.Parts.Sum(p => p.Price), o.Cost.Parts));
        Assert.Equal(1, plan.Causes.Sum(c => c.Share), 0.02);
    }

    [Fact]
    public void A_rebuild_lays_out_every_part_that_comes_out_with_the_screws_that_were_counted()
    {
        var ground = new RepairGround(new ValveFact { Id = "bare", Screws = 8 });
        var parts = ground.Plan("bare", Running).Options.Single(o => o.Kind == RepairKind.Rebuild).Parts;
        Assert.Equal(PracticeBook.Default.Repairing.Parts.Select(p => p.Name), parts.Select(p => p.What));
        Assert.Equal(8, parts.Single(p => p.What == "bonnet screw").Count);
    }

    /// <summary>26 in of trunk at 18 diameters: 11.9 m by the rule of 1.5 ft an inch. A palm has none.</summary>
    [Fact]
    public void Inside_the_protected_ground_of_a_tree_digging_takes_longer_an_arborist_is_asked_and_moving_is_weighed()
    {
        var plan = new RepairGround(RepairGround.Tree(44, 26)).Plan("boxed", Running);
        var root = Assert.Single(plan.Roots);
        Assert.Equal((11.8872, 4), (root.RadiusMetres, root.DistanceMetres));
        Assert.Contains(plan.Permissions, p => p.Kind == PermissionKind.Arborist);
        Assert.Contains(plan.Options, o => o.Kind == RepairKind.Move);
        Assert.Contains(plan.Steps, s => s.Key == RepairSteps.Reached && s.Caution.Contains("oak", StringComparison.Ordinal));
        var free = new RepairGround(RepairGround.Tree(44, 26, "date palm")).Plan("boxed", Running);
        Assert.Empty(free.Roots);
        Assert.True(Of(plan, RepairKind.Replace).Cost.Minutes > Of(free, RepairKind.Replace).Cost.Minutes);
        Assert.DoesNotContain(free.Options, o => o.Kind == RepairKind.Move);
    }

    [Fact]
    public void Paving_is_lifted_where_the_hole_cuts_into_it_and_a_lid_in_it_is_not()
    {
        Assert.Contains(new RepairGround(RepairGround.Path(8, 12)).Plan("bare", Running).Choice.Cost.Lines, l => l.What.Contains("lift path", StringComparison.Ordinal));
        var lid = new RepairGround(RepairGround.Path(38, 42)).Plan("boxed", Running);
        Assert.DoesNotContain(Of(lid, RepairKind.Rebuild).Cost.Lines, l => l.What.Contains("lift path", StringComparison.Ordinal));
        Assert.Contains(Of(lid, RepairKind.Replace).Cost.Lines, l => l.What.Contains("lift path", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_ways_to_work_in_a_wet_hole_the_quickest_is_taken_and_a_new_valve_wants_it_dry()
    {
        var ground = new RepairGround();
        ground.Note(new ReadingFact { How = "hole level", Place = "bare", Value = Shown.Parse("60 cm").Value });
        ground.Wait(30);
        ground.Note(new ReadingFact { How = "hole level", Place = "bare", Value = Shown.Parse("50 cm").Value });
        var plan = ground.Plan("bare", Running);
        Assert.Contains(Of(plan, RepairKind.Rebuild).Cost.Lines, l => l.What == "work wet");
        var dry = Of(plan, RepairKind.Replace).Cost.Lines.Single(l => plan.Hole!.Ways.Any(w => w.Say == l.What));
        Assert.NotEqual("work wet", dry.What);
    }

    [Fact]
    public void A_donor_fits_by_size_body_screws_and_coil_thread_and_what_differs_rules_it_out()
    {
        var looks = new ValveFact { Id = "bare", Body = "Globe", Screws = 6, Thread = "fine" };
        var plan = new RepairGround(looks).Plan("bare", Running);
        Assert.Equal((1.0, 4), (plan.Donors[0].Fits, plan.Donors[0].Same.Count));
        Assert.Equal(RepairKind.Donor, plan.Choice.Kind);
        Assert.Empty(new RepairGround(looks with { Screws = 4 }).Plan("bare", Running).Donors);
        var left = new RepairGround(looks with { Screws = 4 }, new ValveFact { Id = "old", Size = RepairGround.Inches(1), Screws = 4 }, new LeftAsFact { Place = "old", State = "dug up, out of use" }).Plan("bare", Running);
        Assert.Equal(("old", true), (left.Donors[0].Id, left.Donors[0].Spare));
    }

    [Fact]
    public void What_the_opened_valve_shows_turns_the_plan()
    {
        var ground = new RepairGround();
        while (ground.Plan("bare", Running).Steps[0].Key != RepairSteps.Opened)
        {
            ground.Do("bare", Running);
        }

        var cracked = ground.Plan("bare", Running).Steps[0].Sights.Single(s => s.Name == "cracked body");
        ground.Do("bare", Running, s => [.. s.Passed, .. cracked.Notes]);
        var plan = ground.Plan("bare", Running);
        Assert.Equal(RepairKind.Replace, plan.Choice.Kind);
        Assert.True(plan.Causes[0] is { Name: "cracked body", Seen: true, Share: > 0.4 });
    }

    [Fact]
    public void Done_step_by_step_it_notes_the_work_and_ends_closed_up()
    {
        var ground = new RepairGround(new IsolationValveFact { Id = "i", Shuts = ["bare"], Position = new Position(12, 0) });
        var keys = new List<string>();
        for (var plan = ground.Plan("bare", DeadCoil); !plan.IsDone && keys.LastOrDefault() != RepairSteps.Closed; plan = ground.Do("bare", DeadCoil))
        {
            keys.Add(plan.Steps[0].Key);
        }

        Assert.Equal([RepairSteps.Ready, RepairSteps.ShutOff, RepairSteps.Proved, RepairSteps.Reached, RepairSteps.CoilOut, "did coil", RepairSteps.Filled, RepairSteps.Flushed, RepairSteps.Closes, RepairSteps.Loaded, RepairSteps.Closed], keys);
        Assert.True(ground.Plan("bare").IsDone);
        Assert.False(ground.Plan("bare", DeadCoil).IsDone);
        var facts = ground.Notebook().History.Facts;
        Assert.Equal(["shut", "open"], facts.Settings.Where(s => s.Fact.Of == "i").Select(s => s.Fact.State));
        Assert.Equal(("coil replaced", "s1"), (facts.Works[0].Fact.Did, facts.Works[0].Fact.Target));
        Assert.Equal("opens", Assert.Single(facts.Tests).Fact.Behaved);
    }

    [Fact]
    public void A_check_that_fails_has_the_next_best_done_at_the_open_hole()
    {
        var ground = new RepairGround();
        while (ground.Plan("bare", DeadCoil).Steps[0].Key != RepairSteps.Closes)
        {
            ground.Do("bare", DeadCoil);
        }

        // Work ends what belief says: what it was repaired for is kept with the repair.
        ground.Do("bare", DeadCoil, s => s.Failed);
        var plan = ground.Plan("bare", RepairGround.Nothing);
        Assert.Equal("dead coil", plan.Causes.First(c => c.Name != "elsewhere").Name);
        Assert.Contains(ground.Notebook().History.Facts.QuestionsOpened, q => q.Fact.About == "bare");
        Assert.False(Of(plan, RepairKind.Coil).IsPossible);
        Assert.NotEqual(RepairKind.Coil, plan.Choice.Kind);
        Assert.Equal(RepairSteps.Ready, plan.Steps[0].Key);
    }

    [Fact]
    public void Each_step_has_its_caution_and_each_check_says_what_must_be_seen()
    {
        var steps = new RepairGround().Plan("bare", Running).Steps;
        Assert.All(steps.Where(s => s.IsCheck), s => Assert.NotNull(s.Expect));
        Assert.Contains("zero pressure", steps.Single(s => s.Key == RepairSteps.Proved).Caution, StringComparison.Ordinal);
        Assert.Contains("caves in", steps.Single(s => s.Key == RepairSteps.Closed).Caution, StringComparison.Ordinal);
        Assert.Matches(@"opens and waters front lawn; 0\.\d+ ± 0\.\d+ A, .* ohm", steps.Single(s => s.Key == RepairSteps.Loaded).Expect);
    }

    [Fact]
    public void What_nobody_noted_is_said_and_a_name_that_is_none_is_refused_with_those_that_are()
    {
        var ground = new RepairGround(new ValveFact { Id = "lost" });
        Assert.Contains(ground.Plan("lost").Unknown, u => u.StartsWith("where it lies", StringComparison.Ordinal));
        Assert.Null(ground.Plan("lost").Chance);
        Assert.Contains("box 2", RepairPlan.Of(ground.Notebook(), "box 9", RepairGround.Nothing).Problem!.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void All_that_is_sure_enough_is_listed_what_saves_most_for_its_minutes_first()
    {
        var two = new Answers("test", "test", [.. DeadCoil.Questions, .. RepairGround.Sure("stuck-shut", "2").Questions.Select(q => q with { Id = "q2" })], []);
        var list = RepairPlan.All(new RepairGround().Notebook(), two);
        Assert.Equal(["boxed", "bare"], list.Items.Select(i => i.Thing).OrderByDescending(t => t, StringComparer.Ordinal));
        Assert.Equal(list.Items.OrderByDescending(i => i.Worth / (double)i.Minutes), list.Items);
        Assert.Equal(list.Items.Sum(i => i.Price), list.Price);
    }

    private static RepairOption Of(RepairAnswer plan, RepairKind kind) => plan.Options.Single(o => o.Kind == kind);
}
