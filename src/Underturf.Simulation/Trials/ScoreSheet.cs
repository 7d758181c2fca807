using Underturf.Reasoning;

namespace Underturf.Simulation.Trials;

/// <summary>Takes down the first thing that the notebook says of each station when it is acted on, beside the truth of that moment.</summary>
internal sealed class ScoreSheet
{
    private readonly TrialSite site;
    private readonly LimitTable? limits;
    private readonly BaseRates rates;
    private readonly List<ScoredStatement> lines = [];

    public ScoreSheet(TrialSite site, LimitTable? limits)
    {
        (this.site, this.limits) = (site, limits);
        Reader = new Statements(site.View, site.Book, site.Mending);
        rates = new BaseRates(site.View, site.Book);
    }

    public Statements Reader { get; }

    public IReadOnlyList<ScoredStatement> Lines => lines;

    /// <summary>Once for each station.</summary>
    public void Score(OpenQuestion question)
    {
        var stations = Reader.Stations(question);
        if (stations.Count > 0 && !stations.Any(IsScored))
        {
            lines.Add(Line(question, stations));
        }
    }

    /// <summary>Questions that were open at the start and closed without a repair.</summary>
    public void Closed(IEnumerable<IReadOnlyList<string>> asked)
    {
        foreach (var stations in asked.Where(s => s.Count > 0 && !s.Any(IsScored)))
        {
            lines.Add(new ScoredStatement(stations, RepairClass.Nothing, site.Truth.FaultsOf(stations).Count == 0));
        }
    }

    private ScoredStatement Line(OpenQuestion question, IReadOnlyList<string> stations)
    {
        var (said, faults, path) = (Reader.Of(question), site.Truth.FaultsOf(stations), site.Paths[stations[0]]);
        var (top, probability) = said.Top;
        var ohms = site.FirstRead(path.Station).GetValueOrDefault("station ohms")?.Value;
        return new ScoredStatement(stations, top, Reader.IsRight(top, faults))
        {
            Stated = new StatedChances(
                probability,
                Reader.OfTruth(said, faults),
                Reader.OfTruth(rates.Of(path), faults),
                limits is null ? null : Reader.OfTruth(limits.Of(path, ohms, site.View), faults)),
        };
    }

    private bool IsScored(string station) => lines.Exists(l => l.Stations.Contains(station));
}
