using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning.BruteForce;

/// <summary>
/// Belief against every set of up to three faults, wherever they sit, of made-up properties of 19 and 20 stations; under books of few faults, so that the sets can be
/// counted: 0.1 to 55 millions of them. Each holds another way in which stations hang together.
/// </summary>
public sealed class BruteForceTests(ITestOutputHelper output)
{
    /// <summary>The sets leave out four faults and more, belief two corroded splices that no seed leads to: docs/models/diagnosis.md has the largest difference of each book.</summary>
    private const double Near = 0.003;

    [Theory]
    [InlineData(2716, "open-coil open-conductor plain-branch stuck-shut swapped-conductors misread unmodelled")]
    [InlineData(76, "open-coil plain-branch stuck-shut crossed-conductors misread unmodelled")]
    [InlineData(2716, "shorted-coil parted-splice broken-common misread unmodelled")]
    [InlineData(2009, "open-coil weak-supply stuck-shut unmodelled")]
    [InlineData(61, "bad-splice open-coil open-sensor unmodelled")]
    public void Belief_says_what_weighing_every_set_of_faults_says(int seed, string faults)
    {
        var matter = Made(seed, faults);
        Assert.InRange(matter.Paths.Count, 19, 20);
        var belief = BeliefEngine.Of(matter, "c");
        var all = Enumeration.Of(matter, "c");
        output.WriteLine($"{all.Count} sets; 0 to 3 faults: {string.Join(", ", all.BySize)}");
        foreach (var (station, marginals) in all.Marginals)
        {
            Assert.Equal(1, marginals.Values.Sum(), 1e-9);
            var believed = belief.Stations[station].ToLookup(w => StationState.KeyOf(w.Suspects), w => w.Probability);
            foreach (var key in marginals.Keys.Union(believed.Select(b => b.Key)))
            {
                var (exact, said) = (marginals.GetValueOrDefault(key), believed[key].Sum());
                Assert.True(Math.Abs(exact - said) < Near, $"{station}, {key}: {exact:F5} by all sets, {said:F5} by belief");
            }
        }
    }

    /// <summary>Three faults on three stations, drawn twenty times: chances put one upon the other, against the one matrix of all readings.</summary>
    [Fact]
    public void Taking_readings_in_one_after_the_other_is_the_joint_normal_of_all()
    {
        var matter = Made(61, "bad-splice open-coil plain-branch shorted-coil");
        var stations = new ClusterBuilder(matter).Build("c").Select(c => c.Stations[0]).ToList();
        var (spread, unknowns) = (matter.Book.Coil.LevelSpread, matter.Unknowns("c").Count);
        var lists = new StateList(matter, Outlook.Prior(unknowns, 0, spread), unknowns);
        Row[][] rows = [.. stations.Select(lists.Plain)];
        var about = Ground.Agree(rows, unknowns, spread).About;
        var ground = new Ground(rows, spread, about);
        var states = stations.Select((s, i) => lists.Of(s, [], 1, ground.Without(i))).ToList();
        var all = new Ground([.. states.Select(s => s[0].Rows)], spread, about);
        var chance = new SeededGenerator(5);
        for (var round = 0; round < 20; round++)
        {
            var some = new[] { chance.NextInt(6), 6 + chance.NextInt(6), 12 + chance.NextInt(6) };
            var chosen = states.Select((s, i) => some.Contains(i) ? s[1 + chance.NextInt(s.Count - 1)] : s[0]).ToList();
            var exact = JointNormal.LogChance([.. chosen.Select(c => c.Rows)], spread, about) + chosen.Sum(c => c.LogFactor);
            var choice = new Choice([.. states.Select((s, i) => some.Contains(i) ? new List<StationState> { s[0], chosen[i] } : [s[0]])], all, all.LogChance() + states.Sum(s => s[0].LogFactor), 3, exact);
            Assert.Equal(0, Math.Log(choice.BySize[3]), 1e-6);
        }
    }

    private static Case Made(int seed, string faults)
    {
        var ids = faults.Split(' ');
        var book = PracticeBook.Default with { Faults = [.. PracticeBook.Default.Faults.Where(f => ids.Contains(f.Id))] };
        return new Case(PropertyHistory.Fold(WorldGenerator.Make((ulong)seed, book).Log.Standing), book);
    }
}
