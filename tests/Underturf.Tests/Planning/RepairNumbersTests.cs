using System.Text.Json.Nodes;
using Underturf.FieldLog;
using Underturf.Planning.Repair;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Tests.Property;

namespace Underturf.Tests.Planning;

/// <summary>A number of repairs that changes no plan has no place in the practice book.</summary>
public sealed class RepairNumbersTests
{
    [Fact]
    public void A_number_of_repairs_that_changes_nothing_has_no_place_in_the_book()
    {
        Assert.Empty(new IdleNumbers<Case>([.. Cases().SelectMany(c => c.Things.Select(t => c with { Things = [t] }))], Outputs, PracticeBook.Default).Among(BookNumbers.Leaves(BookNumbers.Base()["repairing"]!), Changed));
    }

    private static IEnumerable<Case> Cases()
    {
        var all = string.Join(" + ", PracticeBook.Default.Repairing.Causes.SelectMany(c => c.Of.Keys).Distinct());
        Answers Wrong(string fault, string id) => RepairGround.Sure(fault, [], new PlaceProbability(id, 0.6) { Id = id });
        var looks = new ValveFact { Id = "bare", Body = "globe", Screws = 6 };
        yield return new(new RepairGround(false, looks, RepairGround.Tree(12, 6), RepairGround.Path(8, 12), RepairGround.Tree(41.5, 2, "plum")).Log, ["bare", "boxed"], Wrong(all, "bare"));
        var opened = new RepairGround(false, looks with { Screws = 8 }, RepairGround.Path(10.32, 14));
        opened.Note(RepairRound.Noted("bare", RepairSteps.Opened));
        opened.Note(RepairRound.Saw("bare", "debris"));
        yield return new(opened.Log, ["bare"], Wrong(all, "bare"));
        yield return new(Boxes().Log, ["b3", "b4", "b5", "b6", "b7", "b8", "b9", ""], RepairGround.Sure("bad-splice", "2", new PlaceProbability("box 3", 0.6) { Id = "b3" }));
        foreach (var inches in PracticeBook.Default.Repairing.Sizes.Select(s => s.Inches))
        {
            yield return new(new RepairGround(false, new ValveFact { Id = "bare", Size = RepairGround.Inches(inches), Box = "b2" }).Log, ["bare"], Wrong("valve-not-closing", "bare"));
        }
    }

    /// <summary>Joints for every kind of connector, in boxes of every size.</summary>
    private static RepairGround Boxes()
    {
        var ground = new RepairGround(false, [.. "3456789".Select(n => new BoxFact { Id = $"b{n}", Label = $"box {n}", Position = new Position(60 + n, 0), Size = n == '8' ? "none" : n == '5' ? "10 in round" : "6 in round" })]);
        ground.Note(new ValveFact { Id = "v6", Box = "b6", Size = RepairGround.Inches(1.5) });
        ground.Note(new ValveFact { Id = "v7", Box = "b7", Size = RepairGround.Inches(1.5) });
        ground.Note(new ValveFact { Id = "v8", Box = "b7", Size = RepairGround.Inches(1.5) });
        Joint(ground, "b3", "s2", 18, 18);
        Joint(ground, "b3", null, 14, 14, 18);
        Joint(ground, "b4", null, 22, 22);
        Joint(ground, "b4", null, 22, 22, 22, 22);
        Joint(ground, "b4", null, 20, 20, 20, 20, 20, 20);
        Joint(ground, "b4", null, 18, 18, 18, 18);
        Joint(ground, "b4", null, 18, 18, 18, 18, 18);
        Joint(ground, "b5", null, 14, 14, 14, 14, 14);
        Joint(ground, "b5", null, 12, 12, 12, 12, 12, 12);
        // As many large connectors as ask for each of the larger boxes.
        foreach (var (box, count) in new[] { ("b5", 20), ("b8", 10), ("b9", 63) })
        {
            for (var i = 0; i < count; i++)
            {
                Joint(ground, box, null, 14, 14, 14, 14, 14);
            }
        }

        foreach (var box in new[] { "b6", "b7", "b8" })
        {
            Joint(ground, box, null, 18, 18);
        }

        return ground;
    }

    private static void Joint(RepairGround ground, string box, string? station, params int[] gauges)
    {
        var ids = gauges.Select((_, i) => $"{box}-{station}-{ground.Log.Entries.Count + i}").ToList();
        foreach (var (gauge, i) in gauges.Index().Select(g => (g.Item, g.Index)))
        {
            ground.Note(new EndFact { Id = ids[i], Place = box, Gauge = WireSize.FromAwg(gauge), Station = station, Mates = [.. ids.Where(id => id != ids[i])] });
        }
    }

    private static IEnumerable<string> Outputs(Case about, PracticeBook book)
    {
        var notebook = Notebook.Open(about.Log, book);
        return about.Things.Select(t => t.Length == 0 ? RepairJson.Write(RepairPlan.All(notebook, about.Answers)) : RepairJson.Write(RepairPlan.Of(notebook, t, about.Answers).Value));
    }

    /// <summary>One number put otherwise, as long as the book stays valid: some are whole numbers, some stand between two others, where a smaller step has to do.</summary>
    private static PracticeBook? Changed(string path, double factor) =>
        (from step in new[] { factor, Math.Sqrt(factor) }
         from whole in new[] { false, true }
         select BookNumbers.Changed(path, leaf => Otherwise(leaf, step, whole))).FirstOrDefault(book => book is not null);

    private static JsonValue Otherwise(JsonValue leaf, double factor, bool whole)
    {
        if (leaf.TryGetValue<bool>(out var flag))
        {
            return JsonValue.Create(!flag);
        }

        var number = leaf.GetValue<double>() is var n && n == 0 ? 0.3 : n * factor;
        return whole ? JsonValue.Create((int)(factor > 1 ? Math.Ceiling(number) : number)) : JsonValue.Create(number);
    }

    private sealed record Case(LogDocument Log, string[] Things, Answers Answers);
}
