using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Location;

/// <summary>Tells a planned search as a walk from piece to piece.</summary>
internal sealed class RouteWriter(WhereWords words, PropertyView view, SearchPlanner planner, GroundCells cells, CarefulGround careful)
{
    public SearchRoute Write(SearchTask task, Position from)
    {
        var (stops, walk) = planner.Walk(task, from);
        var spent = new double[stops.Count];
        var visits = new List<SearchStep>();
        foreach (var visit in walk.Visits)
        {
            var stop = stops[visit.Stop];
            var minutes = stop.Plan.Next(spent[visit.Stop], visit.EffortMinutes);
            spent[visit.Stop] += visit.EffortMinutes;
            visits.Add(Step(task, stop, visit, minutes));
        }

        return new SearchRoute(visits, walk.Found, walk.ExpectedTravelMinutes, walk.ExpectedEffortMinutes, walk.LossMinutes, planner.LossMinutes(task));
    }

    private SearchStep Step(SearchTask task, SearchStop stop, SearchVisit visit, double[] minutes)
    {
        var byWay = planner.Ways.Select((way, w) => Effort(way, [.. stop.Cells.Index().Where(c => task.Way(c.Item) == w && minutes[c.Index] > 0).Select(c => (task.Place(c.Item), minutes[c.Index]))])).Where(e => e.Minutes > 0).ToList();
        var at = new Position(stop.XMetres, stop.YMetres);
        if (cells.IsGrid)
        {
            return new SearchStep(at, words.Say(at), AcrossMetres(task, stop, minutes), visit.TravelMinutes, byWay, visit.Found);
        }

        var spot = cells.Spots[Enumerable.Range(0, cells.Count).MinBy(c => cells.Middle(c).DistanceMetresTo(at))];
        return new SearchStep(null, view.Name(spot), 0, visit.TravelMinutes, byWay, visit.Found) { Spot = spot };
    }

    private SearchEffort Effort(SearchWay way, IReadOnlyList<(Position At, double Minutes)> searched) =>
        new(way.Name, way.Say, searched.Sum(c => c.Minutes), $"{way.Caution} {careful.Caution(way, [.. searched.Select(c => c.At)])}".Trim()) { Cells = searched };

    /// <summary>Side of a square as large as the ground that is searched.</summary>
    private double AcrossMetres(SearchTask task, SearchStop stop, double[] minutes) =>
        cells.SideMetres * Math.Sqrt(stop.Cells.Index().Where(c => minutes[c.Index] > 0).Select(c => task.Place(c.Item)).Distinct().Count());
}
