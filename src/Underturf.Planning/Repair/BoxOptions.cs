using Underturf.Planning.Rework;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Planning.Repair;

/// <summary>What can be done about a junction box: the joint that belief points at, or all of them.</summary>
internal sealed class BoxOptions
{
    private readonly BoxCase box;
    private readonly RepairingPractice book;
    private readonly ConnectorChoice connectors;

    public BoxOptions(BoxCase box)
    {
        (this.box, book) = (box, box.Site.Numbers);
        connectors = new ConnectorChoice(book.Connectors);
        Joints = [.. box.Wired.Select(Plan)];
        Fit = Fits();
    }

    public IReadOnlyList<JointPlan> Joints { get; }

    public BoxFit Fit { get; }

    private IReadOnlyList<WiredJoint> Suspected => [.. box.Wired.Where(box.IsSuspected)];

    public IReadOnlyList<RepairOption> Find()
    {
        var all = Of(RepairKind.Box, "rebuild the box, every joint remade", box.Wired, 0);
        return Suspected.Count == 0 || Suspected.Count == box.Wired.Count || box.Rebuild.IsBegun
            ? [all]
            : [.. new[] { all, Of(RepairKind.Joint, Suspected.Count == 1 ? "remake the one joint" : $"remake {Suspected.Count} joints", Suspected, box.Wired.Count - Suspected.Count) }.OrderBy(o => o.Expected)];
    }

    /// <param name="left">Joints that are left as they are: each that goes bad brings one back.</param>
    private RepairOption Of(RepairKind kind, string say, IReadOnlyList<WiredJoint> joints, int left)
    {
        var parts = Parts(joints, kind == RepairKind.Box).ToList();
        var (lines, ends) = (new RepairLines(box.Site.HourPrice), joints.Sum(j => j.Wires.Count));
        lines.Add("free it of growth and soil", book.Joints.ClearMinutes);
        lines.Add($"tag, free and strip {ends} conductors", Times(book.Joints.EndMinutes, ends));
        lines.Add($"remake {Counted(joints.Count, "joint")}", Times(book.Joints.JointMinutes, joints.Count), parts.Where(p => p.What != Fit.Needed).Sum(p => p.Price));
        var stations = box.StationsOf(joints).Count;
        lines.Add($"run and read {Counted(stations, "station")} under load", Times(book.Joints.StationMinutes, stations));
        if (kind == RepairKind.Box && Fit.IsEnough == false && Fit.Needed is { } needed)
        {
            lines.Add($"set a new box: {needed}", book.Joints.BoxMinutes, parts.Where(p => p.What == needed).Sum(p => p.Price));
        }

        lines.Add("house it and close", book.Joints.HouseMinutes);
        var sheet = lines.Sheet;
        var again = CostLine.Of(string.Empty, CostLine.Exact(box.Site.Book.Loss.WrongRepairMinutes), box.Site.HourPrice).Price;
        var cures = box.Chance ?? 1;
        var expected = decimal.Round(sheet.Price + ((1 - (decimal)cures) * again) + (left * (decimal)book.Joints.OldFails * again), 2, MidpointRounding.AwayFromZero);
        var why = left == 0 ? null : $"{Counted(left, "old joint")} stay{(left == 1 ? "s" : string.Empty)}, {Say.Share(1 - Math.Pow(1 - book.Joints.OldFails, left))} that one goes bad before long";
        return new RepairOption(kind, say, sheet, lines.SpreadMinutes, lines.SpreadPrice, cures, expected, "look for it elsewhere", true, why, parts);
    }

    /// <summary>Connectors by kind, wire for the ends that are too short, the box.</summary>
    private IEnumerable<PartLine> Parts(IReadOnlyList<WiredJoint> joints, bool housed)
    {
        foreach (var kind in joints.Select(j => connectors.For([.. j.Wires.Select(w => w.Size)])).OfType<(ConnectorPractice Connector, int Count)>().GroupBy(c => c.Connector).OrderBy(g => g.Key.Price))
        {
            yield return PartsList.Line(kind.Key.Name, kind.Sum(k => k.Count), kind.Key.Price);
        }

        foreach (var size in joints.SelectMany(j => j.Wires).GroupBy(w => w.Size).OrderBy(g => g.Key.DiameterMetres))
        {
            var unit = box.Site.UsUnits ? "ft" : "m";
            var length = CostLine.Exact(Math.Max(0.1, Units.In(size.Count() * book.Joints.ShortEnds * book.Joints.SlackMetres, unit)));
            yield return PartsList.Line($"wire {size.Key} to piece on", length, MetrePrice(size.Key) * (decimal)Units.From(1, unit), unit);
        }

        if (housed && Fit.IsEnough == false && book.Boxes.FirstOrDefault(b => b.Name == Fit.Needed) is { } needed)
        {
            yield return PartsList.Line(needed.Name, 1, needed.Price);
        }
    }

    private decimal MetrePrice(WireSize size) => box.Site.Book.Rework.Wires.MinBy(w => Math.Abs(w.Awg - size.Awg))!.MetrePrice;

    private JointPlan Plan(WiredJoint joint)
    {
        var chosen = connectors.For([.. joint.Wires.Select(w => w.Size)]);
        return new JointPlan(
            joint.IsCommon ? "common" : joint.Station is { } s ? box.Site.View.Name(s) : "station unknown",
            [.. joint.Wires.Select(w => w.Name)],
            [.. joint.Wires.Select(w => w.IsNoted ? w.Size.Say(box.Site.UsUnits) : $"({w.Size.Say(box.Site.UsUnits)})")],
            chosen is { } c ? [PartsList.Line(c.Connector.Name, c.Count, c.Connector.Price)] : [],
            box.IsSuspected(joint),
            chosen is null ? "no connector of the catalogue grips these" : null);
    }

    /// <summary>By the room of all joints, and of the valves that sit in it.</summary>
    private BoxFit Fits()
    {
        var room = box.Wired.Select(j => connectors.For([.. j.Wires.Select(w => w.Size)])).OfType<(ConnectorPractice Connector, int Count)>().Sum(c => c.Connector.CubicCentimetres * c.Count);
        var valves = ValveSizes.In(box.Site, box.Id);
        return new BoxFitter(book).Fit(box.Card.Size, valves, room, $"{Counted(valves.Count, "valve")} and {Counted(box.Wired.Count, "joint")} of {box.Site.Room(room)}");
    }

    private static Span Times(Span span, int count) => new(span.Least * count, span.Likely * count, span.Most * count);

    private static string Counted(int count, string what) => $"{count} {what}{(count == 1 ? string.Empty : "s")}";
}
