using Underturf.Networks.Hydraulics;
using Underturf.Networks.Hydraulics.Isolating;
using Underturf.Numerics;

namespace Underturf.Tests.Networks;

/// <summary>The least costly valves that part a place from all supplies, against trying all sets. All values invented.</summary>
public sealed class IsolationTests
{
    private static readonly Friction plastic = Friction.HazenWilliams(150);

    [Fact]
    public void The_plan_costs_as_little_as_any_set_of_valves_that_does_it()
    {
        var random = new SeededGenerator(61);
        var (found, impossible) = (0, 0);
        for (var trial = 0; trial < 200; trial++)
        {
            var (network, minutes) = Random(random);
            var place = 2 + random.NextInt(network.Nodes.Count - 2);
            var plan = IsolationPlan.Of(network, place, minutes);
            var best = Best(network, place, minutes);
            Assert.Equal(double.IsFinite(best), plan.Succeeded);
            found += plan.Succeeded ? 1 : 0;
            impossible += plan.Succeeded ? 0 : 1;
            if (plan.Succeeded)
            {
                Assert.Equal(best, plan.Value.Minutes, 1e-9);
                Assert.True(IsDry(network, place, plan.Value.Shut));
            }
        }

        Assert.True(found > 50 && impossible > 20);
    }

    [Fact]
    public void What_goes_dry_is_named_and_a_valve_that_does_not_hold_leads_to_the_next_best()
    {
        var (network, near, far, end) = Line();
        var minutes = new Dictionary<int, double> { [near] = 5, [far] = 2 };
        var plan = IsolationPlan.Of(network, end, minutes).Value;
        Assert.Equal([far], plan.Shut);
        Assert.Equal([end], plan.Dry);

        var next = plan.Without(network, far, minutes).Value;
        Assert.Equal([near], next.Shut);
        Assert.Equal([end - 1, end], next.Dry);
    }

    [Fact]
    public void A_place_without_a_valve_before_it_says_where_one_is_needed()
    {
        var (network, _, _, end) = Line();
        var problem = IsolationPlan.Of(network, end, new Dictionary<int, double>()).Problem!;
        Assert.Equal("junction 'end'", problem.Place);
        Assert.Contains("A valve is needed on '", problem.Remedy, StringComparison.Ordinal);
        Assert.Contains("itself", IsolationPlan.Of(network, 0, new Dictionary<int, double>()).Problem!.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_place_that_is_shut_off_already_needs_nothing()
    {
        var (network, near, far, end) = Line();
        var plan = IsolationPlan.Of(network.WithClosed(near, true), end, new Dictionary<int, double> { [far] = 2 }).Value;
        Assert.Empty(plan.Shut);
        Assert.Equal(0, plan.Minutes);
    }

    private static (PipeNetwork Network, int Near, int Far, int End) Line()
    {
        var network = new PipeNetwork(new Water(288.15));
        var (street, middle, end) = (network.AddReservoir("street", 40), network.AddJunction("middle", 0), network.AddJunction("end", 0));
        var near = network.Add(PipeElement.Isolation("near gate", street, middle, 0.05, 0.2));
        var far = network.Add(PipeElement.Isolation("far gate", middle, end, 0.05, 0.2));
        return (network, near, far, end);
    }

    private static (PipeNetwork Network, Dictionary<int, double> Minutes) Random(SeededGenerator random)
    {
        var (network, minutes) = (new PipeNetwork(new Water(288.15)), new Dictionary<int, double>());
        int[] nodes = [network.AddReservoir("street", 40), network.AddReservoir("well", 30), .. Enumerable.Range(0, 6).Select(k => network.AddJunction($"{k}", 0))];
        for (var e = 0; e < 10; e++)
        {
            var (a, b) = (random.NextInt(nodes.Length), random.NextInt(nodes.Length));
            if (a != b)
            {
                var element = network.Add(PipeElement.Pipe($"pipe {e}", nodes[a], nodes[b], 10, 0.05, plastic));
                if (random.NextInt(4) > 0)
                {
                    minutes[element] = 1 + (9 * random.NextDouble());
                }
            }
        }

        return (network, minutes);
    }

    private static double Best(PipeNetwork network, int place, Dictionary<int, double> minutes)
    {
        var best = double.PositiveInfinity;
        int[] valves = [.. minutes.Keys];
        for (var set = 0; set < 1 << valves.Length; set++)
        {
            List<int> shut = [.. valves.Where((_, k) => (set >> k & 1) == 1)];
            var cost = shut.Sum(e => minutes[e]);
            best = cost < best && IsDry(network, place, shut) ? cost : best;
        }

        return best;
    }

    private static bool IsDry(PipeNetwork network, int place, IReadOnlyList<int> shut)
    {
        var reached = new HashSet<int>(Enumerable.Range(0, network.Nodes.Count).Where(n => network.Nodes[n].IsReservoir));
        for (var grown = true; grown;)
        {
            grown = false;
            for (var e = 0; e < network.Elements.Count; e++)
            {
                var (a, b) = (network.Elements[e].A, network.Elements[e].B);
                if (!shut.Contains(e) && reached.Contains(a) != reached.Contains(b))
                {
                    grown = reached.Add(a) | reached.Add(b);
                }
            }
        }

        return !reached.Contains(place);
    }
}
