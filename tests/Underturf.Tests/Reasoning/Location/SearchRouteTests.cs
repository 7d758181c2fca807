using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Tests.Reasoning.Location;

public sealed class SearchRouteTests
{
    private static readonly Position Spot = new(33, 7);

    [Fact]
    public void Each_step_finds_its_share_and_all_of_them_what_the_route_tells()
    {
        var answer = Traced().Locate().Value;
        Assert.Equal(answer.Route!.Found, answer.Route.Steps.Sum(s => s.Found), 9);
        Assert.True(answer.Route.Found < 1 - answer.Things[0].None);
        Assert.True(answer.Route.LossMinutes >= answer.Route.LeastMinutes - 1e-6);
    }

    [Fact]
    public void The_best_step_is_where_the_signal_swelled()
    {
        var best = Traced().Locate().Value.Route!.Steps.MaxBy(s => s.Found)!;
        Assert.InRange(best.At!.Value.DistanceMetresTo(Spot), 0, 3);
        Assert.True(best.Found > 0.3);
    }

    [Fact]
    public void Minutes_are_spent_where_it_is_likeliest()
    {
        var route = Traced().Locate().Value.Route!;
        var probed = route.Steps.SelectMany(s => s.Efforts).Where(e => e.How == "probe rod").SelectMany(e => e.Cells).ToList();
        Assert.InRange(probed.MaxBy(c => c.Minutes).At.DistanceMetresTo(Spot), 0, 2);
    }

    [Fact]
    public void After_a_thorough_search_in_vain_the_next_one_goes_elsewhere()
    {
        var after = Grounds.Corner(Trace(), new SearchFact { How = "probe rod", Where = [Spot], Within = new Length(2.5), Minutes = 150 }, new SearchFact { How = "look over", Where = [Spot], Within = new Length(2.5), Minutes = 30 }).Notebook().Locate().Value;
        Assert.True(after.Route is null || after.Route.Steps.SelectMany(s => s.Efforts).Where(e => e.How == "probe rod").SelectMany(e => e.Cells).All(c => c.At.DistanceMetresTo(Spot) > 1.5));
    }

    [Fact]
    public void Where_nothing_is_known_following_the_wire_comes_before_probing()
    {
        var choices = Grounds.Corner().Notebook().Locate().Value.Choices;
        Assert.Equal("wire tracer", choices[0].How);
        Assert.Contains(choices, c => c.How == "search");
        Assert.Equal(choices.OrderBy(c => c.LossMinutes), choices);
    }

    [Fact]
    public void What_is_not_owned_is_not_proposed()
    {
        var book = PracticeBook.Default with { Locating = PracticeBook.Default.Locating with { Tracing = [.. PracticeBook.Default.Locating.Tracing.Select(t => t with { Owned = false })] } };
        Assert.DoesNotContain(Grounds.Corner().Notebook(book).Locate().Value.Choices, c => c.How == "wire tracer");
    }

    [Fact]
    public void From_where_one_stands_the_walk_is_counted()
    {
        var notebook = Traced();
        var (near, far) = (notebook.Locate("s1", Spot).Value.Route!, notebook.Locate("s1", new Position(-9, 38)).Value.Route!);
        Assert.True(near.TravelMinutes < far.TravelMinutes);
    }

    [Fact]
    public void The_same_notes_give_the_same_bytes() => Assert.Equal(AnswersJson.Write(Traced().Locate().Value), AnswersJson.Write(Traced().Locate().Value));

    private static Notebook Traced() => Grounds.Corner(Trace()).Notebook();

    private static TraceFact Trace() => new() { How = "wire tracer", Of = ["s1"], Route = [new Position(0, 0), new Position(20, 6), Spot], Ended = "swell" };
}
