using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Planning.Repair;

/// <summary>Valves whose insides may fit: those in stock, those of the property that were left out of use, and for their parts those that run.</summary>
internal sealed class DonorFinder(PropertyHistory history, DonorPractice practice)
{
    private readonly PropertyView view = history.Now;

    private const int Most = 6;

    /// <summary>A size is the same within this.</summary>
    private const double SameInches = 0.05;

    /// <summary>Those that can be taken first, then those that fit best.</summary>
    public IReadOnlyList<DonorMatch> For(string id)
    {
        var wanted = Looks(view.Valves[id]);
        var others = view.Valves.Where(v => v.Key != id).Select(v => Match(wanted, v.Key, view.Name(v.Key), Looks(v.Value), IsSpare(v.Key)));
        return
        [
            .. practice.InStock.Select(s => Match(wanted, s.Name, s.Name, new Look(s.Inches, s.Body, s.Screws, s.Thread), true)).Concat(others)
                .Where(d => d.Fits > 0 && (d.Spare || d.Same.Count > 1))
                .OrderByDescending(d => d.Spare).ThenByDescending(d => d.Fits).ThenBy(d => d.Name, NaturalOrder.Instance)
                .Take(Most),
        ];
    }

    /// <summary>It was left so.</summary>
    private bool IsSpare(string valve) => history.Facts.LeftAs.LastOrDefault(l => view.Identity.Of(l.Fact.Place) == valve) is { } left
        && practice.LeftAs.Any(w => left.Fact.State.Contains(w, StringComparison.OrdinalIgnoreCase));

    private DonorMatch Match(Look wanted, string id, string name, Look other, bool spare)
    {
        var (same, differs, unknown) = (new List<string>(), new List<string>(), new List<string>());
        foreach (var (what, alike) in new (string, bool?)[]
        {
            ("size", wanted.Inches is { } a && other.Inches is { } b ? Math.Abs(a - b) < SameInches : null),
            ("body style", Same(wanted.Body, other.Body)),
            ("bonnet screws", wanted.Screws is { } c && other.Screws is { } d ? c == d : null),
            ("coil thread", Same(wanted.Thread, other.Thread)),
        })
        {
            (alike switch { true => same, false => differs, _ => unknown }).Add(what);
        }

        return new DonorMatch(id, name, differs.Count > 0 ? 0 : Math.Pow(practice.UnknownFits, unknown.Count), spare, same, differs, unknown);
    }

    private static bool? Same(string? a, string? b) => a is null || b is null ? null : string.Equals(a.Trim(), b.Trim(), StringComparison.OrdinalIgnoreCase);

    private static Look Looks(ValveFact valve) => new(valve.Size is { } size ? Quantities.Units.In(size.Metres, "in") : null, valve.Body, valve.Screws, valve.Thread);

    private sealed record Look(double? Inches, string? Body, int? Screws, string? Thread);
}
