namespace Underturf.Numerics;

/// <summary>Better orders of the same visits: a run of them moved elsewhere (or-opt), a run walked the other way (2-opt).</summary>
internal static class WalkOrders
{
    private const int LongestMoved = 3;

    /// <summary>Changes as long as something gains, first come first taken.</summary>
    public static bool Improve(WalkDraft draft, double loss)
    {
        var count = draft.Count;
        Span<int> order = stackalloc int[count];
        Span<int> tried = stackalloc int[count];
        for (var k = 0; k < count; k++)
        {
            order[k] = k;
        }

        var (improved, going) = (false, true);
        while (going)
        {
            going = false;
            for (var from = 0; from < count; from++)
            {
                for (var to = from + 1; to < count; to++)
                {
                    going |= Try(draft, order, tried, from, to, turned: true, ref loss);
                    going |= Try(draft, order, tried, from, to, turned: false, ref loss);
                }
            }

            improved |= going;
        }

        if (improved)
        {
            draft.Reorder(order);
        }

        return improved;
    }

    /// <summary>The run from one position to another turned round, or shifted so that its first few come last or its last few first.</summary>
    private static bool Try(WalkDraft draft, Span<int> order, Span<int> tried, int from, int to, bool turned, ref double loss)
    {
        var run = to - from + 1;
        var kept = loss;
        for (var shift = 1; shift <= (turned ? 1 : Math.Min(LongestMoved, run - 1)); shift++)
        {
            for (var way = 0; way < (turned ? 1 : 2); way++)
            {
                order.CopyTo(tried);
                for (var k = 0; k < run; k++)
                {
                    tried[from + k] = turned ? order[to - k] : order[from + ((k + (way == 0 ? shift : run - shift)) % run)];
                }

                if (draft.LossMinutes(tried) is var now && WalkSearch.Gains(now, loss))
                {
                    tried.CopyTo(order);
                    loss = now;
                }
            }
        }

        return loss < kept;
    }
}
