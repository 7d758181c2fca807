using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>A station was run: how its valve behaved and how many places watered, weighed by the volts that reach the coil.</summary>
internal sealed class RunEvidence(Moment moment, string station) : Evidence(moment, [station])
{
    private const int Behaviours = 3;
    private const int Counts = 4;

    private Predictions? predictions;

    /// <summary>What a watcher would report, in words; in the order of <see cref="OutcomeChances"/>.</summary>
    public static readonly IReadOnlyList<string> OutcomeWords =
        [.. from behaved in new[] { "opens", "chatters", "stays shut" } from count in Enumerable.Range(0, Counts + 1) select $"{behaved}, {Watered(count)}"];

    public required Behaviour? Behaved { get; init; }

    /// <summary>Places seen watering; nothing where nobody counted.</summary>
    public required int? Places { get; init; }

    /// <summary>Whether one of them is a place the station is known to water; nothing where that is not known.</summary>
    public required bool? AtOwnPlace { get; init; }

    public required Elsewhere Elsewhere { get; init; }

    public required BenchStore Benches { get; init; }

    public required PracticeBook Book { get; init; }

    /// <summary>Against the likeliest report of a sound station.</summary>
    public override double Surprise(Outlook outlook)
    {
        var chances = ChancesOf([], outlook);
        var noted = Enum.GetValues<Behaviour>().Sum(b => chances[b] * NotedChance(b) * (Places is { } seen ? PlacesChance(b, 0, seen) : 1)) * OwnPlaceChance([]);
        return Math.Log10(OutcomeChances([], outlook).Max() / Math.Max(noted, 1e-12));
    }

    /// <summary>A run that nobody has watched yet.</summary>
    public static RunEvidence Asked(string station, Case owner) => new(Moment.Last, station)
    {
        What = string.Empty,
        Observed = string.Empty,
        Behaved = null,
        Places = null,
        AtOwnPlace = null,
        Elsewhere = Elsewhere.Nothing,
        Benches = owner.BenchesNow,
        Book = owner.Book,
    };

    protected override double LogChanceUnmodelled =>
        (Behaved is null ? 0 : -Math.Log(Behaviours)) + (Places is null ? 0 : -Math.Log(Counts)) + (AtOwnPlace is null ? 0 : -Math.Log(2)) + Math.Log(Elsewhere.Chance(Stations[0], [], Book.Run));

    protected override double LogChanceActive(Suspect[] active, Outlook outlook, JointReadings? before)
    {
        active = OfThisStation(active);
        var chances = ChancesOf(active, outlook, before);
        var (sum, extra) = (0.0, ExtraPlaces(active));
        for (var behaviour = Behaviour.Opens; behaviour <= Behaviour.StaysShut; behaviour++)
        {
            sum += chances[behaviour] * NotedChance(behaviour) * (Places is { } seen ? PlacesChance(behaviour, extra, seen) : 1);
        }

        return Math.Log(Math.Max(sum, double.Epsilon)) + Math.Log(OwnPlaceChance(active) * Elsewhere.Chance(Stations[0], active, Book.Run));
    }

    protected override string PredictedActive(Suspect[] active, Outlook outlook)
    {
        active = OfThisStation(active);
        var chances = ChancesOf(active, outlook);
        var places = Usual + ExtraPlaces(active);
        return $"{Say.Share(chances.Opens)} opens, {Say.Share(chances.Chatters)} chatters at {Said(Volts(active), outlook)}; {places} {(places == 1 ? "place" : "places")}";
    }

    /// <summary>By its behaviour alone.</summary>
    public override double ChanceToRepeat(Suspect[] active, Outlook outlook) => Behaved is { } behaved ? ChancesOf(OfThisStation(active), outlook)[behaved] : 1;

    /// <summary>Volts at the coil before it pulls in, with nothing broken.</summary>
    public string VoltsAtCoil(Outlook outlook) => Said(Volts([]), outlook);

    /// <summary>Chances to open, to chatter and to stay shut, from the volts at the coil against what it needs to pull in.</summary>
    /// <param name="before">Readings that say more of the same wires and coil.</param>
    public BehaviourChances ChancesOf(Suspect[] active, Outlook outlook, JointReadings? before = null)
    {
        var volts = Volts(active);
        var coil = Book.Coil;
        var (mean, spread) = before is { IsEmpty: false } ? before.Expect(volts, null) : (outlook.Mean(volts), Math.Sqrt(outlook.Variance(volts)));
        var sigma = double.Hypot(spread, coil.PullInSpread);
        var opens = Normal.Cdf((mean - coil.PullInVolts) / sigma);
        var moves = Normal.Cdf((mean - coil.ChatterVolts) / sigma);
        var stuck = 0.0;
        foreach (var suspect in active)
        {
            stuck = Math.Max(stuck, suspect.Fault.StaysShut);
        }

        return new BehaviourChances(opens * (1 - stuck), Math.Max(0, moves - opens) * (1 - stuck), 1 - ((1 - stuck) * Math.Max(moves, opens)));
    }

    /// <summary>Places that water beyond its own.</summary>
    public int MorePlaces(Suspect[] active) => ExtraPlaces(OfThisStation(active));

    /// <summary>Chances of what a watcher would report: behaviour by number of places.</summary>
    public double[] OutcomeChances(Suspect[] active, Outlook outlook)
    {
        var row = new double[Behaviours * (Counts + 1)];
        if (active.Any(s => s.Fault.Scope == FaultScope.Unmodelled))
        {
            Array.Fill(row, 1.0 / row.Length);
            return row;
        }

        active = OfThisStation(active);
        var (chances, extra) = (ChancesOf(active, outlook), ExtraPlaces(active));
        foreach (var behaviour in Enum.GetValues<Behaviour>())
        {
            for (var count = 0; count < Counts; count++)
            {
                row[((int)behaviour * (Counts + 1)) + count] = chances[behaviour] * PlacesChance(behaviour, extra, count);
            }
        }

        // More places than are counted here are one outcome.
        row[Counts] = Math.Max(0, 1 - row.Sum());
        return row;
    }

    /// <summary>Those that the run can tell of, where readings between stations tie others to it: not of another station, unless the two are crossed or swapped.</summary>
    private Suspect[] OfThisStation(Suspect[] active)
    {
        foreach (var suspect in active)
        {
            if (!Tells(suspect, active))
            {
                return Telling(active);
            }
        }

        return active;
    }

    /// <summary>By itself, so that nothing is allocated where all do.</summary>
    private Suspect[] Telling(Suspect[] active) => [.. active.Where(s => Tells(s, active))];

    private bool Tells(Suspect suspect, Suspect[] active)
    {
        var own = Stations[0];
        return suspect.Station is not { } station
            || suspect.Concerns(own)
            || (!suspect.IsPair && (station == own || AreJoined(own, station, active)));
    }

    private static bool AreJoined(string one, string other, Suspect[] active)
    {
        foreach (var pair in active)
        {
            if (pair.Concerns(one) && pair.Concerns(other))
            {
                return true;
            }
        }

        return false;
    }

    private static string Watered(int count) => count switch { 0 => "nothing waters", 1 => "one place waters", < Counts => $"{count} places water", _ => "many places water" };

    private Prediction Volts(Suspect[] active) => (predictions ??= new Predictions(Benches, Measure.CoilVolts, Stations, null, inrush: true)).Of(active);

    private static string Said(Prediction volts, Outlook outlook) =>
        Say.Amount(outlook.Mean(volts), Math.Sqrt(outlook.Variance(volts)), Quantities.Dimension.Voltage);

    private int Usual => Math.Max(1, Benches.Path(Stations[0]).Valves.Count);

    private double NotedChance(Behaviour behaviour) => Behaved is not { } noted ? 1
        : noted == behaviour ? 1 - Book.Run.BehaviourMistaken
        : Book.Run.BehaviourMistaken / (Behaviours - 1);

    /// <summary>The usual places are seen when the valve opens; each further one is noticed or not; now and then one is imagined.</summary>
    /// <param name="extra">Places that water beyond its own.</param>
    private double PlacesChance(Behaviour behaviour, int extra, int seen)
    {
        var run = Book.Run;
        var sure = behaviour switch { Behaviour.Opens => Usual, _ => 0 };
        var doubtful = behaviour == Behaviour.Chatters ? Usual + extra : extra;
        return ((1 - run.PlaceImagined) * Binomial(doubtful, seen - sure, run.PlaceNoticed))
            + (run.PlaceImagined * Binomial(doubtful, seen - sure - 1, run.PlaceNoticed))
            + (run.PlaceImagined * run.PlaceImagined / Counts);
    }

    private static int ExtraPlaces(Suspect suspect) => suspect.Fault is { ExtraPlaces: true } && suspect.Passes is Passes.Both or Passes.All ? Math.Max(1, suspect.MoreCoils) : 0;

    private static int ExtraPlaces(Suspect[] active)
    {
        var sum = 0;
        foreach (var suspect in active)
        {
            sum += ExtraPlaces(suspect);
        }

        return sum;
    }

    private double OwnPlaceChance(Suspect[] active)
    {
        if (AtOwnPlace is not { } own)
        {
            return 1;
        }

        var wrong = Array.Exists(active, s => s.Fault.Swaps) ? Book.Run.WrongPlaceNoticed : Book.Run.WrongPlaceImagined;
        return own ? 1 - wrong : wrong;
    }

    private static double Binomial(int n, int k, double p)
    {
        if (k < 0 || k > n)
        {
            return 0;
        }

        var ways = 1.0;
        for (var i = 1; i <= k; i++)
        {
            ways *= (double)(n - k + i) / i;
        }

        return ways * Math.Pow(p, k) * Math.Pow(1 - p, n - k);
    }
}
