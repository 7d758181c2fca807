namespace Underturf.Numerics;

/// <summary>
/// L D L^T of a sparse symmetric positive definite matrix, front by front: the pattern once, numbers and right-hand sides as often as wanted
/// in the same memory.
/// </summary>
/// <remarks>Multifrontal after Duff and Reid, ACM Transactions on Mathematical Software 9(3), 1983 (from memory).</remarks>
public sealed class SparseFactor
{
    private readonly SparsePattern pattern;
    private readonly double[] values;
    private readonly double[] permuted;
    private readonly double[] front;
    private double[] waiting = [];
    private int waitingEnd;

    public SparseFactor(SparsePattern pattern)
    {
        this.pattern = pattern;
        values = new double[pattern.ValueCount];
        permuted = new double[pattern.Size];
        var most = Enumerable.Range(0, pattern.Fronts.Count).Select(pattern.Fronts.Below).DefaultIfEmpty().Max();
        front = new double[most * most];
    }

    /// <summary>
    /// The numbers of the matrix where the pattern says, each entry on one side of the diagonal only, zero elsewhere; <see cref="Factor"/>
    /// uses them up.
    /// </summary>
    public Span<double> Values => values;

    /// <returns>Whether every pivot is positive, so that the matrix is positive definite and can be solved.</returns>
    public bool Factor() => FactorFronts(grounded: false);

    /// <summary>
    /// For the equations of a network of conductances, no entry off the diagonal positive: the diagonal is not read but given by what it has
    /// over the sizes of its row's entries. Nothing is then subtracted, so that conductances far apart keep all their digits (the idea of
    /// Grassmann, Taksar and Heyman, Operations Research 33(5), 1985, there for Markov chains).
    /// </summary>
    /// <param name="ground">For each unknown, zero or more; a connected part needs one above zero.</param>
    public bool FactorGrounded(ReadOnlySpan<double> ground)
    {
        for (var k = 0; k < permuted.Length; k++)
        {
            permuted[k] = ground[pattern.Order[k]];
        }

        return FactorFronts(grounded: true);
    }

    /// <summary>Solves in place.</summary>
    public void Solve(Span<double> x)
    {
        for (var k = 0; k < permuted.Length; k++)
        {
            permuted[k] = x[pattern.Order[k]];
        }

        var fronts = pattern.Fronts;
        for (var f = 0; f < fronts.Count; f++)
        {
            FrontMath.Forward(Panel(f), permuted.AsSpan(fronts.FirstColumn[f]), fronts.Width(f), fronts.Rows(f), permuted);
        }

        for (var f = fronts.Count - 1; f >= 0; f--)
        {
            FrontMath.Back(Panel(f), permuted.AsSpan(fronts.FirstColumn[f]), fronts.Width(f), fronts.Rows(f), permuted);
        }

        for (var k = 0; k < permuted.Length; k++)
        {
            x[pattern.Order[k]] = permuted[k];
        }
    }

    private Span<double> Panel(int f) => values.AsSpan(pattern.PanelStart[f]..pattern.PanelStart[f + 1]);

    private bool FactorFronts(bool grounded)
    {
        waitingEnd = 0;
        var positive = true;
        for (var f = 0; f < pattern.Fronts.Count && positive; f++)
        {
            positive = FactorFront(f, grounded);
        }

        return positive;
    }

    private bool FactorFront(int f, bool grounded)
    {
        var (width, below) = (pattern.Fronts.Width(f), pattern.Fronts.Below(f));
        var panel = Panel(f);
        var update = front.AsSpan(0, below * below);
        update.Clear();
        TakeUpdates(f, panel, update, (width, below));
        if (grounded ? !FactorGrounded(f, panel, width) : !FrontMath.Factor(panel, width, below))
        {
            return false;
        }

        if (below > 0)
        {
            FrontMath.Update(panel, update, width, below);
            Keep(update);
        }

        return true;
    }

    private bool FactorGrounded(int f, Span<double> panel, int width) =>
        FrontMath.FactorGrounded(panel, permuted.AsSpan(pattern.Fronts.FirstColumn[f]), width, pattern.Fronts.Rows(f), permuted);

    /// <summary>Adds what the children left, the last of them first, as it lies last.</summary>
    private void TakeUpdates(int f, Span<double> panel, Span<double> update, (int Width, int Below) shape)
    {
        var fronts = pattern.Fronts;
        for (var child = fronts.LastChild[f]; child >= 0; child = fronts.Earlier[child])
        {
            var size = fronts.Below(child);
            waitingEnd -= size * size;
            var destination = pattern.Destination.AsSpan(fronts.RowStart[child], size);
            FrontMath.Add(waiting.AsSpan(waitingEnd, size * size), destination, panel, update, shape.Width, shape.Below);
        }
    }

    private void Keep(ReadOnlySpan<double> update)
    {
        if (waitingEnd + update.Length > waiting.Length)
        {
            Array.Resize(ref waiting, 2 * (waitingEnd + update.Length));
        }

        update.CopyTo(waiting.AsSpan(waitingEnd));
        waitingEnd += update.Length;
    }
}
