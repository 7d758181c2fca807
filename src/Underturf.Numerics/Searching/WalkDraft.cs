namespace Underturf.Numerics;

/// <summary>A walk in the making: visits in order, their minutes, and what each finds.</summary>
internal sealed class WalkDraft(SearchErrand errand)
{
    /// <summary>A visit shorter than this is none.</summary>
    private const double LeastMinutes = 1e-9;

    private const int Again = 12;

    private readonly int[] seen = new int[errand.Count];

    public SearchErrand Errand => errand;

    public List<int> Stops { get; } = [];

    public List<double> Minutes { get; } = [];

    public List<SearchBout> Bouts { get; } = [];

    public int Count => Stops.Count;

    /// <summary>Every stop once, and some of them again: what comes later is planned anew on the way.</summary>
    public int MostVisits => errand.Count + Again;

    public WalkDraft Copy()
    {
        var copy = new WalkDraft(errand);
        copy.Stops.AddRange(Stops);
        copy.Minutes.AddRange(Minutes);
        copy.Bouts.AddRange(Bouts);
        return copy;
    }

    public void Insert(int at, int stop, double minutes)
    {
        Stops.Insert(at, stop);
        Minutes.Insert(at, minutes);
        Refresh();
    }

    public void RemoveAt(int at)
    {
        Drop(at);
        Refresh();
    }

    /// <summary>The same visits in another order.</summary>
    public void Reorder(ReadOnlySpan<int> order)
    {
        var (stops, minutes) = (Stops.ToArray(), Minutes.ToArray());
        for (var k = 0; k < order.Length; k++)
        {
            (Stops[k], Minutes[k]) = (stops[order[k]], minutes[order[k]]);
        }

        Refresh();
    }

    /// <summary>Visits of no minutes go; two at one stop in a row are one. What each finds is worked out anew.</summary>
    public void Refresh()
    {
        for (var k = Count - 1; k >= 0; k--)
        {
            if (Minutes[k] < LeastMinutes)
            {
                Drop(k);
            }
        }

        for (var k = Count - 1; k > 0; k--)
        {
            if (Stops[k - 1] == Stops[k])
            {
                Minutes[k - 1] += Minutes[k];
                Drop(k);
            }
        }

        Bouts.Clear();
        for (var k = 0; k < Count; k++)
        {
            Bouts.Add(new SearchBout(errand.Stop(Stops[k]), SpentBefore(k), Minutes[k]));
        }
    }

    /// <summary>Minutes spent at a visit's stop in the visits before it.</summary>
    public double SpentBefore(int visit) => SpentBefore(visit, Stops[visit]);

    public double SpentBefore(int visit, int stop)
    {
        var spent = 0.0;
        for (var k = 0; k < visit; k++)
        {
            spent += Stops[k] == stop ? Minutes[k] : 0;
        }

        return spent;
    }

    /// <summary>The next visit to a stop from one on; below zero where there is none.</summary>
    public int NextAt(int stop, int from) => Stops.IndexOf(stop, from);

    /// <summary>Way to a visit from the one before.</summary>
    public double TravelMinutes(int visit) => errand.TravelMinutes(visit == 0 ? -1 : Stops[visit - 1], Stops[visit]);

    /// <summary>Minutes on the way and at stops from one visit until before another.</summary>
    public double LastsMinutes(int from, int to)
    {
        var minutes = 0.0;
        for (var k = from; k < to; k++)
        {
            minutes += TravelMinutes(k) + Minutes[k];
        }

        return minutes;
    }

    /// <summary>Chance found in the visits from one until before another.</summary>
    public double Found(int from, int to)
    {
        var found = 0.0;
        for (var k = from; k < to; k++)
        {
            found += Bouts[k].Found;
        }

        return found;
    }

    public double LossMinutes()
    {
        Span<int> order = stackalloc int[Count];
        for (var k = 0; k < Count; k++)
        {
            order[k] = k;
        }

        return LossMinutes(order);
    }

    /// <summary>The loss if the visits were made in another order; without end where two visits to one stop would change places, which is the same walk written otherwise.</summary>
    public double LossMinutes(ReadOnlySpan<int> order)
    {
        Array.Fill(seen, -1);
        var (loss, missing, at) = (0.0, 1.0, -1);
        foreach (var visit in order)
        {
            var (stop, bout) = (Stops[visit], Bouts[visit]);
            if (seen[stop] > visit)
            {
                return double.PositiveInfinity;
            }

            loss += (missing * (errand.TravelMinutes(at, stop) + bout.EffortMinutes)) - bout.SparedMinutes;
            missing -= bout.Found;
            (at, seen[stop]) = (stop, visit);
        }

        return loss + (errand.WorthMinutes * missing);
    }

    private void Drop(int at)
    {
        Stops.RemoveAt(at);
        Minutes.RemoveAt(at);
    }
}
