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

    private readonly List<LabelBox> taken = [];

    public void Keep(double x, double y, double radius) => taken.Add(new LabelBox(x - radius, y - radius, 2 * radius, 2 * radius));

    /// <param name="radius">Of the symbol that it belongs to.</param>
    public LabelBox Place(double x, double y, double radius, double width, double height)
    {
        var best = default(LabelBox);
        var least = double.PositiveInfinity;
        foreach (var distance in distances)
        {
            foreach (var angle in angles)
            {
                var (away, across) = (Math.Cos(angle) * (radius + distance + (width / 2)), Math.Sin(angle) * (radius + distance + (height / 2)));
                var box = new LabelBox(x + away - (width / 2), y + across - (height / 2), width, height);
                var cost = Cost(box);
                if (cost < least)
                {
                    (best, least) = (box, cost);
                }
            }

            if (least == 0)
            {
                break;
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
        var outside = (box.Width * box.Height) - box.Overlap(new LabelBox(frame.Left, frame.Top, frame.Width, frame.Height));
        return taken.Sum(t => t.Overlap(box)) + (outside > 0.01 ? 3 * outside : 0);
    }
}
