namespace Underturf.Papers;

/// <summary>Puts blocks on pages one below the other and keeps together what belongs together.</summary>
internal sealed class Flow
{
    private readonly PageForm form;
    private readonly List<Sheet> sheets = [];
    private double y;
    private bool fresh;

    private Flow(PageForm form)
    {
        this.form = form;
        TurnPage();
    }

    public static IReadOnlyList<Sheet> Pages(IEnumerable<Block> blocks, PageForm form)
    {
        var flow = new Flow(form);
        var chain = new List<Block>();
        foreach (var block in blocks)
        {
            chain.Add(block);
            if (!block.WithNext)
            {
                flow.Place(chain);
                chain.Clear();
            }
        }

        flow.Place(chain);
        return flow.sheets;
    }

    /// <summary>A chain that is taller than a page is cut between its blocks; there is no better place.</summary>
    private void Place(List<Block> chain)
    {
        var height = chain.Sum(b => b.BeforePoints + b.HeightPoints);
        if (!fresh && y + height > form.BottomPoints && height <= form.BottomPoints - form.TopPoints)
        {
            TurnPage();
        }

        foreach (var block in chain)
        {
            if (!fresh && y + block.BeforePoints + block.HeightPoints > form.BottomPoints)
            {
                TurnPage();
            }

            if (fresh && block.Head is { } head)
            {
                Put(head);
            }

            Put(block);
        }
    }

    private void Put(Block block)
    {
        y += fresh ? 0 : block.BeforePoints;
        block.Draw(sheets[^1], y);
        y += block.HeightPoints;
        fresh = fresh && block.HeightPoints == 0;
    }

    private void TurnPage()
    {
        sheets.Add(new Sheet(form));
        y = form.TopPoints;
        fresh = true;
    }
}
