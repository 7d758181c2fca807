using Underturf.FieldLog;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>A look into a place: what was found, and what was not though one would have seen it there.</summary>
internal sealed class LookEvidence(Moment moment, IReadOnlyList<string> stations) : Evidence(moment, stations)
{
    public required string Place { get; init; }

    public required IReadOnlyList<string> Found { get; init; }

    /// <summary>Whether the note names the stations it is about; if not, a finding may belong to any that passes.</summary>
    public required bool NamesStations { get; init; }

    /// <summary>Whether somebody saw what a fault of the practice book looks like, and of these stations.</summary>
    public bool ShowsFault => NamesStations && Found.Intersect(Book.Findings, StringComparer.Ordinal).Any();

    public required PracticeBook Book { get; init; }

    public override bool CanBeMisread => false;

    public override double Surprise(double logLevel) => -LogChance([]) / Math.Log(10);

    protected override double LogChanceUnmodelled => LogChance([]);

    protected override void WeighActive(IReadOnlyList<Suspect> active, CoilLevels levels, double[] into) => Add(LogChance(active), into);

    protected override string PredictedActive(IReadOnlyList<Suspect> active, double logLevel)
    {
        var here = active.Where(IsHere).ToList();
        return here.Count == 0 ? "nothing odd here" : string.Join(", ", here.Select(s => $"{Say.Share(s.Fault!.Seen)} to see it"));
    }

    /// <summary>Each finding of the book is a question by itself: was it noted or not.</summary>
    private double LogChance(IReadOnlyList<Suspect> active)
    {
        var sum = 0.0;
        foreach (var finding in Book.Findings)
        {
            var chance = active.Where(s => IsHere(s) && s.Fault!.FindingName == finding).Select(s => s.Fault!.Seen).DefaultIfEmpty(0).Max();
            chance = Math.Max(chance, Background(finding));
            sum += Math.Log(Found.Contains(finding) ? chance : 1 - chance);
        }

        return sum;
    }

    /// <summary>Chance to note a finding that is not the suspect's: imagined, or that of another station that passes here.</summary>
    private double Background(string finding)
    {
        var others = NamesStations ? 0 : Math.Max(0, Stations.Count - 1);
        var rate = Book.Faults.Where(f => f.FindingName == finding).Max(f => f.Rate * f.Seen);
        return Math.Min(0.5, Book.Look.Imagined + (others * rate));
    }

    private bool IsHere(Suspect suspect) =>
        suspect.Place == Place && (suspect.Station is null || Stations.Contains(suspect.Station) || (suspect.Other is { } other && Stations.Contains(other)));
}
