namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// A first look at what a cluster says of a fault on what stations share: all else sound, or at the worst a fault of its own besides. Amounts between two
/// that say the same for the same reason say it too.
/// </summary>
internal sealed class Preview
{
    /// <summary>What a station costs at the most that the fault alone does not explain: it may have a fault of its own.</summary>
    private const double OwnFault = -7;

    private readonly Case owner;
    private readonly Cluster cluster;
    private readonly Suspect[] first;
    private readonly Outlook outlook;
    private readonly double[] without;
    private readonly double none;
    private readonly double total;
    private readonly JointReadings before = new();

    /// <param name="first">Shared faults that are taken as given.</param>
    /// <param name="logTotal">log of the chance of the cluster's notes without the fault; where nothing is given, that of a sound cluster.</param>
    public Preview(Case owner, Cluster cluster, Suspect[] first, Outlook outlook, double? logTotal)
    {
        (this.owner, this.cluster, this.first, this.outlook) = (owner, cluster, first, outlook);
        none = cluster.LogNone;
        before.Begin(outlook);
        without = [.. Notes.Select(e => e.LogChance(first, outlook, owner.Cures, before))];
        total = logTotal ?? none + without.Sum();
        MostGain = Math.Max(0, none + Notes.Sum(e => e.LogCeiling) - total);
    }

    private IReadOnlyList<Evidence> Notes => cluster.Evidence;

    /// <summary>The cluster speaks for no fault more strongly than this, in the logarithm.</summary>
    public double MostGain { get; }

    /// <summary>Adds to the score of each amount, from one to another, what the cluster says of it.</summary>
    public void AddTo(double[] scores, SuspectFamily family, int lowest, int highest)
    {
        var low = At(family[lowest]);
        scores[lowest] += low.Score;
        if (highest > lowest)
        {
            var high = At(family[highest]);
            scores[highest] += high.Score;
            Between(scores, family, (lowest, low), (highest, high));
        }
    }

    private void Between(double[] scores, SuspectFamily family, (int Index, Word Word) low, (int Index, Word Word) high)
    {
        if (low.Word.IsAlike(high.Word))
        {
            for (var i = low.Index + 1; i < high.Index; i++)
            {
                scores[i] += low.Word.Score;
            }
        }
        else if (high.Index - low.Index > 1)
        {
            var middle = (low.Index + high.Index) / 2;
            var word = At(family[middle]);
            scores[middle] += word.Score;
            Between(scores, family, low, (middle, word));
            Between(scores, family, (middle, word), high);
        }
    }

    private Word At(Suspect suspect)
    {
        Suspect[] active = first.Length == 0 ? suspect.Alone : [.. first, suspect];
        var (sum, worst, least, changed) = (none, 0, double.PositiveInfinity, false);
        before.Begin(outlook);
        for (var i = 0; i < Notes.Count; i++)
        {
            var chance = Notes[i].LogChance(active, outlook, owner.Cures, before);
            (worst, least) = chance < least ? (i, chance) : (worst, least);
            changed |= chance != without[i];
            sum += chance;
        }

        var score = sum - total;
        var word = !changed ? new Word(0, -1, 0)
            : score > OwnFault ? new Word(score, worst, 0)
            : new Word(OwnFault, worst, Notes[worst].Side(active, outlook, owner.Cures));
        return cluster.MayReturnBy(active) ? word with { Score = Numerics.LogMath.LogAdd(word.Score, 0) - Math.Log(2) } : word;
    }

    /// <param name="Note">The note that speaks most against it; -1 where none changes.</param>
    /// <param name="Side">On which side of that note it lies; 0 where that says nothing.</param>
    private readonly record struct Word(double Score, int Note, int Side)
    {
        public bool IsAlike(Word other) => Note == other.Note && Side == other.Side && (Note < 0 || Side != 0);
    }
}
