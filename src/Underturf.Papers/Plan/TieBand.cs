using System.Xml.Linq;
using Underturf.Property;

namespace Underturf.Papers;

/// <summary>The ties in words, in columns beneath the map: a distance is read from a list, not off a drawing.</summary>
internal sealed class TieBand(PlanFrame frame)
{
    private const int MostTied = 24, Columns = 3, MostLines = 5;
    private const double Gap = 30, TextRow = 16;

    private static readonly TextStyle measure = new(Weight.Regular, 13, Ink.Ink);

    private readonly List<XElement> drawn = [];

    /// <summary>Where what follows may begin.</summary>
    public double BottomUnits { get; private set; } = frame.Top + frame.Height;

    public XElement? Draw(PlanContent content, PaperMatter matter)
    {
        var things = content.Ties.GroupBy(tie => tie.Thing).Select(thing => Said(thing.Key, [.. thing], content, matter)).ToList();
        if (things.Count == 0)
        {
            return null;
        }

        var top = BottomUnits + Gap;
        drawn.Add(Svg.Text(frame.Left, top, "Ties: taped distances", "head"));
        var rows = things.Take(MostTied).Chunk(Columns).ToList();
        foreach (var row in rows)
        {
            top += TextRow * row.Select((said, column) => Column(said, column, top + TextRow + 6)).Max() + 8;
        }

        if (things.Count > MostTied)
        {
            top += Column($"and {things.Count - MostTied} more", 0, top + TextRow + 6) * TextRow;
        }

        BottomUnits = top + TextRow;
        return Svg.Group("ties", drawn);
    }

    /// <summary>"box 7: 27.3 m from the north-east corner of the hall, 5.0 m from the oak; give or take 0.2 m".</summary>
    private static string Said(string thing, List<Tie> ties, PlanContent content, PaperMatter matter)
    {
        var place = content.Tied.FirstOrDefault(tied => tied.Thing == thing);
        var spread = place?.Spot is { } spot ? $"; give or take {Tie.Say(spot.LongMetres, matter.UsesUsUnits)}" : place is not null ? "; one of two places" : string.Empty;
        return $"{matter.View.Name(thing)}: {string.Join(", ", ties.Select(tie => $"{tie.Words(matter.UsesUsUnits)} from {matter.Tied.Mark(tie)}"))}{spread}";
    }

    /// <returns>How many lines it takes.</returns>
    private int Column(string said, int column, double top)
    {
        var width = (frame.Width - ((Columns - 1) * Gap)) / Columns;
        var room = width / PlanLabel.StandInFaceRatio;
        var lines = TextWrap.Lines(Shorten.Name(said, measure, room, MostLines), measure, room).ToList();
        drawn.AddRange(lines.Select((line, i) => Svg.Text(frame.Left + (column * (width + Gap)), top + (i * TextRow), line, "body")));
        return lines.Count;
    }
}
