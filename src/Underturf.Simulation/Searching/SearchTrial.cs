using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Simulation;

/// <summary>What a search cost.</summary>
/// <param name="SearchMinutes">Of searching until found or given up, on average over how thoroughly one searches.</param>
/// <param name="Missing">Chance that it was given up.</param>
public sealed record SearchCost(double SearchMinutes, double TravelMinutes, double Missing)
{
    /// <summary>With what it costs to leave it hidden.</summary>
    public double Loss(double unfoundMinutes) => SearchMinutes + TravelMinutes + (unfoundMinutes * Missing);
}

/// <summary>One hidden valve, searched for by the notebook's route and, with the same belief, by two rules of thumb.</summary>
public static class SearchTrial
{
    /// <summary>Rules search outwards ring by ring, so wide, and look over so much first.</summary>
    private const double RingMetres = 1, LookMetres = 8;

    /// <summary>Probing goes over each ring a little more than once.</summary>
    private const double Thorough = 1.05;

    public const int Rings = 24;

    private const double DigSquareMetres = 1.5, StripMetres = 2;

    /// <summary>The notebook's route, step by step; nothing is noted on the way.</summary>
    public static SearchCost Own(SearchScene scene, LocationAnswer answer, Position from, PracticeBook book)
    {
        var (ground, at, side) = (new SearchedGround(scene), from, answer.Heat!.SideMetres);
        var (search, travel) = (0.0, 0.0);
        foreach (var step in answer.Route?.Steps ?? [])
        {
            travel += ground.Missing * at.DistanceMetresTo(step.At!.Value) / book.Walk.MetresPerMinute;
            foreach (var effort in step.Efforts)
            {
                var there = effort.Cells.Where(c => Math.Max(Math.Abs(c.At.EastMetres - scene.Truth.EastMetres), Math.Abs(c.At.NorthMetres - scene.Truth.NorthMetres)) <= side / 2).Select(c => c.Minutes).FirstOrDefault();
                search += ground.Search(effort.How, there > 0, side * side, there, effort.Minutes);
            }

            at = step.At.Value;
        }

        return new SearchCost(search, travel, ground.Missing);
    }

    /// <summary>Outwards from the best guess: looked over first, then probed ring by ring; the cost of giving up after each ring.</summary>
    public static IReadOnlyList<SearchCost> Outwards(SearchScene scene, Position guess, Position from, PracticeBook book) =>
        [.. Rounds(scene, new SearchedGround(scene), guess, 0, from.DistanceMetresTo(guess) / book.Walk.MetresPerMinute)];

    /// <summary>Along the path that the signal took, looking; a hole where it faded; then outwards from there.</summary>
    public static IReadOnlyList<SearchCost> AlongPath(SearchScene scene, Position from, PracticeBook book)
    {
        var (ground, route) = (new SearchedGround(scene), scene.Route.Count > 0 ? scene.Route : [scene.Last]);
        var search = 0.0;
        for (var i = 1; i < route.Count; i++)
        {
            var metres = route[i - 1].DistanceMetresTo(route[i]);
            var holds = GroundShape.DistanceMetres(route[i - 1], route[i], scene.Truth) <= StripMetres / 2;
            search += ground.Search("look over", holds, StripMetres * metres, SearchedGround.Minutes("look over", StripMetres * metres));
        }

        var dug = route[^1].DistanceMetresTo(scene.Truth) <= Math.Sqrt(DigSquareMetres / Math.PI);
        search += ground.Search("hand dig", dug, DigSquareMetres, SearchedGround.Minutes("hand dig", DigSquareMetres));
        return [.. Rounds(scene, ground, route[^1], search, from.DistanceMetresTo(route[0]) / book.Walk.MetresPerMinute)];
    }

    private static IEnumerable<SearchCost> Rounds(SearchScene scene, SearchedGround ground, Position middle, double search, double travel)
    {
        var metres = middle.DistanceMetresTo(scene.Truth);
        yield return new SearchCost(search, travel, ground.Missing);
        search += Ring(ground, "look over", metres <= LookMetres, Math.PI * LookMetres * LookMetres, 1);
        for (var ring = 1; ring <= Rings; ring++)
        {
            var (inner, outer) = ((ring - 1) * RingMetres, ring * RingMetres);
            search += Ring(ground, "probe rod", metres > inner && metres <= outer, Math.PI * ((outer * outer) - (inner * inner)), Thorough);
            yield return new SearchCost(search, travel, ground.Missing);
        }
    }

    private static double Ring(SearchedGround ground, string how, bool holds, double area, double thorough) =>
        ground.Search(how, holds, area, thorough * SearchedGround.Minutes(how, area));
}
