using Underturf.FieldLog;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>A look into a place: what was found, and what was not though one would have seen it there.</summary>
internal sealed class LookEvidence(Moment moment, IReadOnlyList<string> stations) : Evidence(moment, stations)
{
    private Dictionary<string, double>? backgrounds;
    private double? nothing;

    public required string Place { get; init; }

    public required IReadOnlyList<string> Found { get; init; }

    /// <summary>Whether the note names the stations it is about; if not, a finding may belong to any that passes.</summary>
    public required bool NamesStations { get; init; }

    /// <summary>Whether somebody saw what a fault of the practice book looks like, and of these stations.</summary>
    public bool ShowsFault => NamesStations && Found.Any(f => Backgrounds.ContainsKey(f));

    public required PracticeBook Book { get; init; }

    public override bool CanBeMisread => false;

    /// <summary>What one sees of a fault does not hang on its amount.</summary>
    public override int Side(Suspect[] suspects, Outlook outlook, Cures cures, JointReadings? before = null) => 1;

    public override double Surprise(Outlook outlook) => -LogChance([]) / Math.Log(10);

    public override double ChanceToRepeat(Suspect[] active, Outlook outlook) => Math.Exp(LogChance(active));

    protected override double LogChanceUnmodelled => LogChance([]);

    protected override double LogChanceActive(Suspect[] active, Outlook outlook, JointReadings? before) => LogChance(active);

    protected override string PredictedActive(Suspect[] active, Outlook outlook)
    {
        var here = active.Where(IsHere).ToList();
        return here.Count == 0 ? "nothing odd here" : string.Join(", ", here.Select(s => $"{Say.Share(s.Fault.Seen)} to see it"));
    }

    /// <summary>Each finding of the book is a question by itself: was it noted or not. Only what a suspect here shows changes it.</summary>
    private double LogChance(Suspect[] active)
    {
        var sum = Nothing;
        for (var i = 0; i < active.Length; i++)
        {
            if (IsHere(active[i]) && IsFirstOfItsKind(active, i))
            {
                var finding = active[i].Fault.FindingName;
                var background = Backgrounds[finding];
                sum += Log(finding, Math.Max(Seen(active, finding), background)) - Log(finding, background);
            }
        }

        return sum;
    }

    /// <summary>Chance to see a finding of those here that show it, the plainest of them.</summary>
    private double Seen(Suspect[] active, string finding)
    {
        var seen = 0.0;
        foreach (var suspect in active)
        {
            seen = IsHere(suspect) && suspect.Fault.FindingName == finding ? Math.Max(seen, suspect.Fault.Seen) : seen;
        }

        return seen;
    }

    private bool IsFirstOfItsKind(Suspect[] active, int at)
    {
        for (var i = 0; i < at; i++)
        {
            if (IsHere(active[i]) && active[i].Fault.FindingName == active[at].Fault.FindingName)
            {
                return false;
            }
        }

        return active[at].Fault.Seen > 0;
    }

    private double Log(string finding, double chance) => Math.Log(Found.Contains(finding) ? chance : 1 - chance);

    /// <summary>Of what was noted, nothing being wrong here.</summary>
    private double Nothing => nothing ??= Backgrounds.Sum(b => Log(b.Key, b.Value));

    private Dictionary<string, double> Backgrounds => backgrounds ??= Book.Findings.ToDictionary(f => f, Background, StringComparer.Ordinal);

    /// <summary>Chance to note a finding that is not the suspect's: imagined, or that of another station that passes here.</summary>
    private double Background(string finding)
    {
        var others = NamesStations ? 0 : Math.Max(0, Stations.Count - 1);
        var rate = Book.Faults.Where(f => f.FindingName == finding).Max(f => f.Rate * f.Seen);
        return Math.Min(0.5, Book.Look.Imagined + (others * rate));
    }

    private bool IsHere(Suspect suspect) =>
        suspect.Place == Place && !suspect.Seat.IsUnfound && (suspect.Station is null || Stations.Contains(suspect.Station) || (suspect.Other is { } other && Stations.Contains(other)));
}
