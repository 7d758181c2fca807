namespace Underturf.Papers;

internal readonly record struct LabelBox(double X, double Y, double Width, double Height)
{
    public double Overlap(LabelBox other) =>
        Math.Max(0, Math.Min(X + Width, other.X + other.Width) - Math.Max(X, other.X))
        * Math.Max(0, Math.Min(Y + Height, other.Y + other.Height) - Math.Max(Y, other.Y));
}

/// <summary>
/// Puts labels beside their points, each where it covers least of what is there already: rings of places outward, the nearest free one
/// wins. Greedy, so what matters most goes first.
/// </summary>
internal sealed class LabelPlacer(PlanFrame frame)
{
    private static readonly double[] angles = [0, Math.PI, -Math.PI / 4, Math.PI / 4, -3 * Math.PI / 4, 3 * Math.PI / 4, -Math.PI / 2, Math.PI / 2];
    private static readonly double[] distances = [3, 10, 20, 34, 52, 76, 104, 140];

    private const double LineStep = 7;
    private const int MostSteps = 300;

    /// <summary>Cost of a unit of distance, of a unit of area over a line, and over another label or symbol.</summary>
    private const double DistanceCost = 4, LineCost = 1, LabelCost = 30;

    private const double Inset = 8;

    private readonly List<LabelBox> taken = [];
    private readonly List<LabelBox> lines = [];

    public void Keep(double x, double y, double radius) => taken.Add(Around(x, y, radius));

    /// <summary>Keeps labels off a line, as far as there is room beside it.</summary>
    public void KeepLine(IReadOnlyList<(double X, double Y)> line)
    {
        for (var i = 1; i < line.Count; i++)
        {
            var ((x, y), (toX, toY)) = (line[i - 1], line[i]);
            var steps = Math.Clamp((int)(Math.Max(Math.Abs(toX - x), Math.Abs(toY - y)) / LineStep), 1, MostSteps);
            for (var s = 0; s <= steps; s++)
            {
                lines.Add(Around(x + ((toX - x) * s / steps), y + ((toY - y) * s / steps), LineStep / 3));
            }
        }
    }

    /// <param name="radius">Of the symbol that it belongs to.</param>
    public LabelBox Place(double x, double y, double radius, double width, double height)
    {
        var best = default(LabelBox);
        var least = double.PositiveInfinity;
        foreach (var distance in distances.TakeWhile(d => d * DistanceCost < least))
        {
            foreach (var angle in angles)
            {
                var (away, across) = (Math.Cos(angle) * (radius + distance + (width / 2)), Math.Sin(angle) * (radius + distance + (height / 2)));
                var box = new LabelBox(x + away - (width / 2), y + across - (height / 2), width, height);
                var cost = Cost(box) + (distance * DistanceCost);
                if (cost < least)
                {
                    (best, least) = (box, cost);
                }
            }
        }

        taken.Add(best);
        return best;
    }

    /// <summary>Centred on its point where that is free; for the names of surfaces.</summary>
    public LabelBox PlaceCentred(double x, double y, double width, double height)
    {
        var box = new LabelBox(x - (width / 2), y - (height / 2), width, height);
        if (Cost(box) > 0)
        {
            return Place(x, y, 0, width, height);
        }

        taken.Add(box);
        return box;
    }

    private double Cost(LabelBox box)
    {
        var inner = new LabelBox(frame.Left + Inset, frame.Top + Inset, frame.Width - (2 * Inset), frame.Height - (2 * Inset));
        var outside = (box.Width * box.Height) - box.Overlap(inner);
        return (LabelCost * taken.Sum(t => t.Overlap(box))) + (LineCost * lines.Sum(l => l.Overlap(box))) + (outside > 0.01 ? LabelCost * outside : 0);
    }

    private static LabelBox Around(double x, double y, double radius) => new(x - radius, y - radius, 2 * radius, 2 * radius);
}
