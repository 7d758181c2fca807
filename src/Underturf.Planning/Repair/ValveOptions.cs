using Underturf.Planning.Rework;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Planning.Repair;

/// <summary>What can be done about a valve, each with its minutes, its price, its chance of a cure and what follows where it does not.</summary>
internal sealed class ValveOptions(ValveCase valve)
{
    private readonly PartsList parts = new(valve);
    private readonly ValveLines lines = new(valve);

    private DonorMatch? Donor => valve.Donor;

    /// <summary>Possible ones first, of those the cheapest expected first; what is begun stays first.</summary>
    public IReadOnlyList<RepairOption> Find() =>
    [
        .. Kinds().Select(Of)
            .OrderByDescending(o => o.Kind == valve.Round.Worked).ThenByDescending(o => o.IsPossible)
            .ThenBy(o => o.Expected).ThenBy(o => o.Kind),
    ];

    private IEnumerable<RepairKind> Kinds()
    {
        yield return RepairKind.Coil;
        yield return RepairKind.Clean;
        yield return RepairKind.Rebuild;
        if (Donor is not null)
        {
            yield return RepairKind.Donor;
        }

        yield return RepairKind.Replace;
        if (valve.Roots.Count > 0 || valve.Paving is not null)
        {
            yield return RepairKind.Move;
        }
    }

    private RepairOption Of(RepairKind kind)
    {
        var (all, air) = lines.Of(kind);
        var (sheet, cures) = (all.Sheet, Cures(kind, valve.Causes));
        var vain = valve.Round.Vain.Contains(kind);
        return new RepairOption(
            kind,
            lines.SayOf(kind) + (air ? ", with air among the roots" : string.Empty),
            sheet,
            all.SpreadMinutes,
            all.SpreadPrice,
            cures,
            decimal.Round(sheet.Price + Tail(kind, valve.Causes), 2, MidpointRounding.AwayFromZero),
            Next(kind) is { } next ? lines.SayOf(next) : "find out what else it is",
            !vain,
            vain ? "it was done and did not cure it" : Why(kind),
            parts.Of(kind))
        { Air = air };
    }

    /// <summary>Expected price of what follows: where it does not cure, the next in line, and so on. A new valve that does not cure either is a wrong repair.</summary>
    private decimal Tail(RepairKind kind, CauseWeights causes)
    {
        var fails = 1 - (decimal)Cures(kind, causes);
        if (fails <= 0)
        {
            return 0;
        }

        return fails * (Next(kind) is { } next
            ? lines.Added(next).Sheet.Price + Tail(next, kind == RepairKind.Donor ? causes : causes.AfterVain(kind))
            : CostLine.Of(string.Empty, CostLine.Exact(valve.Site.Book.Loss.WrongRepairMinutes), valve.Site.HourPrice).Price);
    }

    private static RepairKind? Next(RepairKind kind) => kind switch
    {
        RepairKind.Coil or RepairKind.Clean => RepairKind.Rebuild,
        RepairKind.Rebuild or RepairKind.Donor => RepairKind.Replace,
        _ => null,
    };

    private double Cures(RepairKind kind, CauseWeights causes) => causes.Cures(kind) * kind switch
    {
        RepairKind.Donor => Donor!.Fits,
        RepairKind.Move => valve.Site.Numbers.Moving.Good,
        _ => 1,
    };

    private string? Why(RepairKind kind)
    {
        var fails = 1 - Cures(kind, valve.Causes);
        var fits = kind == RepairKind.Donor && Donor!.Unknown.Count > 0 ? $"; not known of both: {string.Join(", ", Donor.Unknown)}" : string.Empty;
        return $"{Say.Share(fails)} that it does not cure it{fits}";
    }
}
