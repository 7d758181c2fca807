namespace Underturf.Reasoning.Location;

/// <summary>
/// How much likelier a note makes each place of a thing, beside what it would be anywhere: 1 says nothing.
/// </summary>
/// <param name="Cells">For each cell.</param>
/// <param name="None">Where there is no such thing.</param>
internal sealed record Layer(double[] Cells, double None)
{
    /// <summary>A sum of layers, each with its weight.</summary>
    public static Layer Sum(IReadOnlyList<(double Weight, Layer? Layer)> parts, int count)
    {
        var cells = new double[count];
        Array.Fill(cells, parts.Where(p => p.Layer is null).Sum(p => p.Weight));
        var none = cells[0];
        foreach (var (weight, layer) in parts)
        {
            if (layer is not null)
            {
                Numerics.RowMath.AddTimes(cells, weight, layer.Cells);
                none += weight * layer.None;
            }
        }

        return new Layer(cells, none);
    }
}

/// <summary>One way in which a note can have come about.</summary>
/// <param name="Weight">Its share beforehand; below zero where it is taken off another.</param>
/// <param name="Layers">For each thing of the group what it says of its place; nothing where it says nothing.</param>
internal sealed record ClueCase(double Weight, IReadOnlyList<Layer?> Layers);

/// <summary>What one note, or several of one kind, say of where the things of a group lie.</summary>
/// <param name="Entries">Ids of the notes.</param>
/// <param name="Cases">The ways in which it can have come about: which of the things made it, or none.</param>
internal sealed record Clue(IReadOnlyList<string> Entries, string Say, IReadOnlyList<ClueCase> Cases)
{
    /// <summary>One of the things made it, or none did.</summary>
    /// <param name="hit">Chance that one did.</param>
    /// <param name="layer">What it says of that one.</param>
    /// <param name="passed">What it says of each, whichever made it.</param>
    public static Clue MadeByOne(string entry, string say, IReadOnlyList<bool> may, double hit, Layer layer, Layer? passed = null)
    {
        var makers = may.Count(m => m);
        IReadOnlyList<Layer?> Row(int maker) => [.. may.Select((m, i) => !m ? null : i == maker ? layer : passed)];
        return new Clue([entry], say, [new ClueCase(1 - hit, Row(-1)), .. Enumerable.Range(0, may.Count).Where(i => may[i]).Select(i => new ClueCase(hit / makers, Row(i)))]);
    }
}
