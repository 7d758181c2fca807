using Underturf.FieldLog;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Water;

namespace Underturf.Papers;

/// <summary>The water: what runs away, what is believed of each station, and which valve shuts off what.</summary>
internal static class WaterPart
{
    public static IEnumerable<Block> Blocks(PageForm form, PaperMatter matter)
    {
        if (matter.Notebook.Water() is not { } report)
        {
            return [];
        }

        var say = new WaterSay(matter.UsesUsUnits);
        return [.. Paragraph.Heading(form, "Water"), .. Loss(form, report, say), .. Stations(form, report, say), .. Devices(form, report, say), .. Drainage(form, report, say), .. Shuts(form, report)];
    }

    private static IEnumerable<Block> Loss(PageForm form, WaterReport report, WaterSay say)
    {
        if (report.Idle is not { } idle)
        {
            return [];
        }

        var lost = report.Lost is { } loss ? $" Lost while it runs: {loss.Say(say)}, nine times in ten." : string.Empty;
        return Paragraph.Of(form, $"With everything off: {idle} ({Say.Share(report.IdleProbability!.Value)}).{lost}", Styles.Strong, 4);
    }

    private static IEnumerable<Block> Stations(PageForm form, WaterReport report, WaterSay say)
    {
        var noted = report.Stations.Where(s => s.State is not null).ToList();
        if (noted.Count == 0)
        {
            return [];
        }

        var table = new Table(form.LeftPoints, [new("Station", 60), new("Meter", 74, true), new("What is believed of its water", form.InnerWidthPoints - 204), new("How likely", 70)]);
        var rows = noted.Select(s => (IReadOnlyList<Cell>)
        [
            Cell.Of(s.Number, Styles.StrongCell),
            Cell.Of(s.ReadCubicMetresPerSecond is { } read ? say.Flow(read) : string.Empty),
            Cell.Of(Sentence.Upper(s.State!) + (s.Caught is { } caught ? $"; cans: {caught.Say(say)}" : string.Empty), Styles.Cell, Grade.Inferred),
            Cell.Of(Say.Share(s.Probability!.Value)),
        ]);
        var left = report.Stations.Where(s => s.State is null).Select(s => s.Number).ToList();
        return
        [
            .. Paragraph.Minor(form, "Station by station"),
            .. table.Blocks(rows),
            .. left.Count == 0 ? [] : Paragraph.Of(form, $"Of stations {string.Join(", ", NumberRuns.Of(left))} no water was read or seen.", Styles.Small, 3),
        ];
    }

    private static IEnumerable<Block> Devices(PageForm form, WaterReport report, WaterSay say) =>
        report.Devices.SelectMany(d => Paragraph.Of(form, $"Lost in the {d.Say(say)}.", Styles.Body, 3));

    private static IEnumerable<Block> Drainage(PageForm form, WaterReport report, WaterSay say)
    {
        if (report.Drainage.Count == 0)
        {
            return [];
        }

        var table = new Table(form.LeftPoints, [new("Station", 60), new("Once its valve has shut", form.InnerWidthPoints - 220), new("What helps", 160)]);
        var rows = report.Drainage.Select(d => (IReadOnlyList<Cell>)
        [
            Cell.Of(report.Drainage.Count(o => o.Station == d.Station) > 1 ? $"{d.Number}, {d.Valve}" : d.Number, Styles.StrongCell),
            Cell.Of(Sentence.Upper(d.Say(say)), Styles.Cell, Grade.Inferred),
            Cell.Of(d.Help(say) is { } help ? Sentence.Upper(help) : string.Empty),
        ]);
        return [.. Paragraph.Minor(form, "What runs out at the low end"), .. table.Blocks(rows)];
    }

    private static IEnumerable<Block> Shuts(PageForm form, WaterReport report)
    {
        if (report.Shuts.Count == 0)
        {
            return [];
        }

        var table = new Table(form.LeftPoints, [new("Valve", 150), new("Shuts off stations", form.InnerWidthPoints - 250), new("Stands", 100)]);
        var rows = report.Shuts.Select(s => (IReadOnlyList<Cell>)
        [
            Cell.Of(Sentence.Upper(s.Name), Styles.StrongCell),
            Cell.Of(
                s.Stations.Count > 0 ? string.Join(", ", NumberRuns.Of(s.Stations)) : s.ByPipes is null ? "nobody has noted what" : "none by itself",
                Styles.Cell,
                s.ByPipes switch { true => Grade.Measured, false => Grade.Told, null => Grade.Unknown }),
            Cell.Of((s.StandsShut ? "shut" : "open") + (s.Holds is { } holds ? $"; {Say.Share(holds)} that it holds" : string.Empty)),
        ]);
        return [.. Paragraph.Minor(form, "What shuts what"), .. table.Blocks(rows)];
    }
}
