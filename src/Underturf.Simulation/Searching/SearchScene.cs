using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Simulation;

/// <summary>A made-up property with a valve that nobody has found, the log as a technician begins with, and where it lies.</summary>
/// <param name="Station">The station whose valve is hidden.</param>
/// <param name="Truth">Where it lies.</param>
/// <param name="Last">The last place that its conductor is known to pass.</param>
/// <param name="Route">The path of that signal.</param>
public sealed record SearchScene(ulong Seed, LogDocument Log, string Station, Position Truth, Position Last, IReadOnlyList<Position> Route)
{
    /// <summary>Chance that a way of searching can see it at all; no number of the practice book.</summary>
    public required IReadOnlyDictionary<string, bool> Seen { get; init; }

    /// <summary>Roots are in the way of a rod or a hole where it lies.</summary>
    public required bool AmongRoots { get; init; }

    private static readonly DateTimeOffset Morning = new(2031, 5, 6, 8, 0, 0, TimeSpan.FromHours(-6));

    public static SearchScene Make(ulong seed, int stations, PracticeBook book)
    {
        var chance = new SeededGenerator(seed).Fork("search scene");
        var shape = WorldShape.Whole(stations, 0) with { BuriedShare = 0.3 };
        PropertyPlan plan;
        IReadOnlyList<PlannedStation> hidden;
        var tries = 0;
        do
        {
            plan = new PlanDraw(shape, stations, chance.Fork($"plan {tries++}"), new TrueNumbers(book, seed)).Draw();
            hidden = [.. plan.Stations.Where(s => plan.Boxes[s.Box].Buried)];
        }
        while (hidden.Count == 0);

        var keeper = new LogKeeper($"hidden-{seed}");
        var minute = 0;
        void Note(Fact fact) => keeper.Note("maren", Morning.AddMinutes(minute++), fact);
        new FirstNotes(plan, shape, chance.Fork("first notes"), Note).Write();
        var station = chance.Fork("which").Pick(hidden);
        new WateredGround(plan, chance.Fork("watered"), Note).Write();
        var hints = new SearchHints(plan, station, chance.Fork("hints"), Note);
        hints.Write();
        var seen = chance.Fork("seen");
        return new SearchScene(seed, keeper.Log(), station.Id, plan.Boxes[station.Box].At, hints.Last, hints.Route)
        {
            AmongRoots = plan.Terrain.IsAmongRoots(plan.Boxes[station.Box].At),
            Seen = new Dictionary<string, bool>(StringComparer.Ordinal) { ["look over"] = seen.Happens(0.25), ["probe rod"] = seen.Happens(0.88), ["hand dig"] = true },
        };
    }
}
