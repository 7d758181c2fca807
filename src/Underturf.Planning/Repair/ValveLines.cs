using Underturf.Planning.Rework;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Planning.Repair;

/// <summary>Minutes and money of repairing a valve, line by line.</summary>
internal sealed class ValveLines(ValveCase valve)
{
    private readonly RepairingPractice book = valve.Site.Numbers;
    private readonly bool rooted = valve.Roots.Count > 0;

    /// <summary>All of it, from laying out the parts to the lid; of digging by hand and with air the cheaper.</summary>
    public (RepairLines Lines, bool Air) Of(RepairKind kind)
    {
        var hand = All(kind, book.Roots.HandFactor, 0);
        if (!rooted || kind == RepairKind.Move)
        {
            return (hand, false);
        }

        var air = All(kind, book.Roots.AirFactor, book.Roots.AirPrice);
        return air.Sheet.Price < hand.Sheet.Price ? (air, true) : (hand, false);
    }

    private RepairLines All(RepairKind kind, decimal rootFactor, decimal airPrice)
    {
        var lines = new RepairLines(valve.Site.HourPrice);
        lines.Add("lay out the parts", book.ReadyMinutes, 0, 0);
        if (valve.Shut is { } shut)
        {
            lines.Add($"{valve.ShutWords} and prove that there is no pressure", CostLine.Exact(shut.Minutes), 0, 0);
        }

        Reach(lines, kind, rooted && kind != RepairKind.Move ? rootFactor : 1, airPrice);
        Hole(lines, kind);
        Work(lines, kind, rooted && kind == RepairKind.Replace ? rootFactor : 1);
        Proof(lines);
        if (kind is RepairKind.Replace or RepairKind.Move && new PartsList(valve).Box is { } box)
        {
            lines.Add($"set a box: {box.Name}", book.Joints.BoxMinutes, box.Price);
        }

        return lines.Add("soil and lid back", book.CloseMinutes);
    }

    private void Reach(RepairLines lines, RepairKind kind, decimal factor, decimal airPrice)
    {
        var among = factor > 1 ? ", among roots" : string.Empty;
        if (kind == RepairKind.Move)
        {
            lines.Add("dig where it is to be", book.ExposeMinutes);
        }
        else if (valve.Box is not null)
        {
            lines.Add($"open {valve.Site.View.Name(valve.Box)} and clear round the bonnet{among}", book.OpenMinutes, airPrice, factor);
        }
        else
        {
            lines.Add($"dig it up{among}", book.ExposeMinutes, airPrice, factor);
        }

        if (factor > 1 && valve.Roots[0] is var (ground, metres))
        {
            var chance = (decimal)(book.Roots.ArboristChance * (1 - (metres / ground.RadiusMetres)));
            lines.Add($"an arborist, should a root of {valve.Site.Small(book.Roots.ArboristMillimetres)} or more lie in the way ({Say.Share((double)chance)})", 0, 0, chance * book.Roots.ArboristPrice);
        }

        if (valve.Paving is { } paving && kind != RepairKind.Move && (valve.Box is null || kind == RepairKind.Replace))
        {
            lines.Add($"lift {valve.Site.View.Name(paving)} and lay it again", book.Paving.Minutes, book.Paving.Price);
        }
    }

    /// <summary>Waiting and pumping go before the work; where it is done in the water it takes longer. Between two ends every time is as likely.</summary>
    private void Hole(RepairLines lines, RepairKind kind)
    {
        if (kind == RepairKind.Move || valve.Hole(kind) is not { } way)
        {
            return;
        }

        if (way.Before is { } before)
        {
            lines.Add(way.Say, CostLine.Exact((before.Least + before.Most) / 2), CostLine.Exact((before.Most - before.Least) / Math.Sqrt(12)), 0);
        }
        else
        {
            lines.Add(way.Say, RepairLines.Mean(Span(kind)) * ((decimal)valve.Site.Book.Water.Isolating.WetFactor - 1), 0, 0);
        }
    }

    private void Work(RepairLines lines, RepairKind kind, decimal factor)
    {
        var parts = new PartsList(valve);
        var price = parts.Of(kind).Where(p => p.What != parts.Box?.Name).Sum(p => p.Price);
        lines.Add(SayOf(kind), Span(kind), price, factor);
        if (kind == RepairKind.Move)
        {
            var metres = CostLine.Exact(valve.ClearMetres());
            lines.Add($"lay {valve.Length((double)metres)} of pipe and wire to it", metres * book.Moving.PipeMetreMinutes, 0, metres * book.Moving.PipeMetrePrice);
            lines.Add("meet both pipes, cap the old ones", book.Moving.Minutes);
        }
    }

    private void Proof(RepairLines lines) => lines.Add("flush, let the air out, fill slowly, watch it close, run it under load", book.ProofMinutes);

    /// <summary>What comes on top where another repair at the open hole did not cure it.</summary>
    public RepairLines Added(RepairKind kind)
    {
        var lines = new RepairLines(valve.Site.HourPrice);
        Work(lines, kind, rooted && kind == RepairKind.Replace ? book.Roots.HandFactor : 1);
        Proof(lines);
        return lines;
    }

    private Span Span(RepairKind kind) => kind switch
    {
        RepairKind.Coil => book.CoilMinutes,
        RepairKind.Clean => book.CleanMinutes,
        RepairKind.Rebuild => book.RebuildMinutes,
        RepairKind.Donor => book.Donors.Minutes,
        _ => book.ReplaceMinutes,
    };

    public string SayOf(RepairKind kind) => kind switch
    {
        RepairKind.Coil => "change the coil",
        RepairKind.Clean => "open it, clean it, put it back with its own parts",
        RepairKind.Rebuild => "rebuild it in place, every part that comes out new",
        RepairKind.Donor => $"put the inside of {valve.Donor!.Name} into it",
        RepairKind.Replace => "set a new valve in its place",
        _ => $"set a new valve {valve.Length(valve.ClearMetres())} away, clear of {string.Join(" and ", new[] { rooted ? "roots" : null, valve.Paving is null ? null : "paving" }.OfType<string>())}",
    };
}
