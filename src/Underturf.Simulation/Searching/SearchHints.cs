using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Quantities;

namespace Underturf.Simulation;

/// <summary>
/// What a technician comes to know of a hidden valve before searching: a signal followed with heavier errors than the model's, what somebody
/// says, sounds that fall off otherwise than the model has it, outlets that fill by the length of pipe, ohms, an earlier hunt in the wrong place.
/// </summary>
internal sealed class SearchHints(PropertyPlan plan, PlannedStation station, SeededGenerator chance, Action<Fact> note)
{
    private readonly Position valve = plan.Boxes[station.Box].At;

    /// <summary>The last place that its conductor is known to pass.</summary>
    public Position Last { get; } = LastKnown(plan, station);

    public IReadOnlyList<Position> Route { get; private set; } = [];

    public void Write()
    {
        When(0.6, Trace);
        When(0.35, Told);
        When(0.3, Listened);
        When(0.4, Filled);
        When(0.3, Ohms);
        When(0.25, Hunted);
        When(0.15, () => Near("wet ground", chance.Happens(0.4), 5));
        When(0.2, () => Near("old dig", chance.Happens(0.3), 1.5));
    }

    private static Position LastKnown(PropertyPlan plan, PlannedStation station)
    {
        var known = plan.Chain(station).Where(b => !plan.Boxes[b].Buried).ToList();
        return known.Count > 0 ? plan.Boxes[known[^1]].At : plan.Terrain.Controllers[plan.Boxes[station.Box].Controller];
    }

    private void When(double share, Action what)
    {
        if (chance.Happens(share))
        {
            what();
        }
    }

    /// <summary>By a dog-leg from the last known place; it swells at the valve or at a splice, is lost at a turn, or is given up.</summary>
    private void Trace()
    {
        var turn = Off(new Position((Last.EastMetres + valve.EastMetres) / 2, (Last.NorthMetres + valve.NorthMetres) / 2), 0.2 * Last.DistanceMetresTo(valve));
        var share = chance.Between(0.3, 0.95);
        var brief = share < 0.5 ? Between(Last, turn, share * 2) : Between(turn, valve, (share * 2) - 1);
        var (ended, end) = chance.PickWeighted<(string, Position)>([(("swell", valve), 0.45), (("swell", brief), 0.1), (("lost", Off(valve, 2)), 0.15), (("lost", brief), 0.15), (("goes on", brief), 0.15)]);
        Route = [.. new[] { Last }.Concat(share >= 0.5 || end == valve ? [turn] : Array.Empty<Position>()).Append(end).Select(p => Off(p, 0.5))];
        note(new TraceFact { How = "wire tracer", Of = [station.Id], Route = Route, Ended = ended });
    }

    private void Told() => Near("told where", chance.Happens(0.65), 6);

    /// <summary>A step rather than a bell: heard nearly always within two metres, hardly beyond four.</summary>
    private void Listened()
    {
        var at = Off(chance.Happens(0.6) ? valve : Anywhere(), 4);
        var heard = chance.Happens(0.03 + (0.7 / (1 + Math.Exp(2 * (at.DistanceMetresTo(valve) - 3)))));
        note(new SignFact { How = heard ? "heard" : "not heard", About = station.Id, Where = [at] });
    }

    /// <summary>Pipe is longer than the straight line, now and then much.</summary>
    private void Filled()
    {
        var outlets = Enumerable.Range(0, 3 + chance.NextInt(3)).Select(_ => Off(valve, 12)).ToList();
        IReadOnlyList<Position> order = [.. outlets.OrderBy(o => o.DistanceMetresTo(valve) * Math.Exp(0.35 * chance.HeavyTailed()))];
        note(chance.Happens(0.5) ? new SignFact { How = "fill order", About = station.Id, Where = order } : new SignFact { How = "first to fill", About = station.Id, Where = [order[0]] });
    }

    private void Ohms()
    {
        var metres = plan.Chain(station).Sum(b => plan.Runs[(b, station.Phase)].Metres) * Math.Exp(0.1 * chance.HeavyTailed());
        note(new SignFact { How = "distance", About = station.Id, From = PropertyPlan.ControllerId(plan.Boxes[station.Box].Controller), Distance = new Length(Math.Max(1, Math.Round(metres))) });
    }

    /// <summary>Somebody searched where it was not, or where it was and missed it.</summary>
    private void Hunted()
    {
        var at = chance.Happens(0.7) ? Off(valve, 20) : Last;
        if (at.DistanceMetresTo(valve) > 2 || chance.Happens(0.3))
        {
            note(new SearchFact { How = chance.Pick(new[] { "look over", "probe rod" }), About = station.Id, Where = [at], Within = new Length(Math.Round(chance.Between(1, 4), 1)), Minutes = Math.Round(chance.Between(3, 20)) });
        }
    }

    private void Near(string how, bool right, double metres) => note(new SignFact { How = how, About = station.Id, Where = [Off(right ? valve : Anywhere(), metres)] });

    private Position Off(Position at, double metres) => plan.Terrain.Nearby(at, metres);

    private Position Anywhere() => new(Math.Round(chance.NextDouble() * plan.Terrain.WideMetres, 1), Math.Round(chance.NextDouble() * plan.Terrain.WideMetres, 1));

    private static Position Between(Position from, Position to, double share) => new(from.EastMetres + (share * (to.EastMetres - from.EastMetres)), from.NorthMetres + (share * (to.NorthMetres - from.NorthMetres)));
}
