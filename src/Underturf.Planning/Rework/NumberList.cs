namespace Underturf.Planning.Rework;

/// <summary>The terminals as they will be, and what became of old numbers.</summary>
internal sealed class NumberList(Site site, IReadOnlyList<Chosen> chosen)
{
    public IEnumerable<TerminalRow> Rows()
    {
        var moved = chosen.Where(c => c.Terminal is not null).ToLookup(c => (c.Need.Controller, c.Terminal!.Value));
        foreach (var controller in site.View.Controllers.Keys)
        {
            var stations = site.View.Stations.Where(s => site.View.Identity.Of(s.Value.Controller) == controller).ToLookup(s => s.Value.Terminal);
            foreach (var terminal in stations.Select(s => s.Key).Concat(moved.Where(m => m.Key.Controller == controller).Select(m => m.Key.Value)).Distinct().Order())
            {
                yield return moved[(controller, terminal)].FirstOrDefault() is { } planned
                    ? new TerminalRow(site.View.Name(controller), terminal, ReworkNotes.NumberOf(site, planned), ReworkPlan.NameOf(site, planned.Need), site.View.Stations[planned.Need.Station].Minutes, site.View.StationNumber(planned.Need.Station), true)
                    : Known(site.View.Name(controller), terminal, stations[terminal].First().Key);
            }
        }
    }

    /// <summary>What was changed, oldest first, then what is to be changed.</summary>
    public IEnumerable<NumberChange> Changes() =>
    [
        .. site.Notebook.History.Facts.Renumbered.Select(r => new NumberChange(r.Fact.Was, r.Fact.Now, r.Fact.Waters, r.At)),
        .. chosen.Where(c => c.Terminal is not null).Select(c => new NumberChange(site.View.StationNumber(c.Need.Station), ReworkNotes.NumberOf(site, c), ReworkPlan.NameOf(site, c.Need), null)),
    ];

    private TerminalRow Known(string controller, int terminal, string station)
    {
        var was = site.Notebook.History.Facts.Renumbered.LastOrDefault(r => site.View.Identity.Of(r.Fact.Station) == station);
        var gone = chosen.Where(c => c.Need.Station == station && c.Terminal is not null).Select(c => c.Need.Valve.Waters).ToList();
        var waters = site.View.Stations[station].Waters.Where(w => !gone.Contains(w));
        return new TerminalRow(controller, terminal, site.View.StationNumber(station), string.Join(", ", waters), site.View.Stations[station].Minutes, was?.Fact.Was, false);
    }
}
