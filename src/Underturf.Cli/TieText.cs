using System.Globalization;
using System.Text;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Cli;

/// <summary>Ties as text for a terminal: where a thing is, how sure, what each tape says, what to tape next.</summary>
internal static class TieText
{
    private static readonly string[] heads = ["from", "taped", "give or take", "grade", "off"];

    public static string Write(TieAnswer answer, bool us) => answer.Things.Count == 0
        ? "Nothing is tied yet."
        : string.Join(Environment.NewLine + Environment.NewLine, answer.Things.Select(thing => Thing(thing, us)));

    private static string Thing(TiedPlace place, bool us)
    {
        var text = new StringBuilder();
        text.AppendLine(Head(place, us));
        foreach (var spot in place.Spots.Skip(place.State == TieState.TwoPlaces ? 0 : 1))
        {
            text.AppendLine($"  {Where(spot.At, us)} ({Say.Share(spot.Probability)}), {Ellipse(spot, us)}");
        }

        if (place.Decided is { } decided)
        {
            text.AppendLine($"  Two places fit the tapes: {decided}.");
        }

        if (place.NotedAt is { } noted)
        {
            text.AppendLine($"  On the plan: {Where(noted, us)}.");
        }

        if (place.Ties.Count > 0)
        {
            text.AppendLine(TextTable.Of(heads, place.Ties.Select(tie => Row(tie, us))));
        }

        foreach (var doubt in place.Doubts)
        {
            text.AppendLine($"  ! {place.Name}: {doubt.Reason}: {char.ToLowerInvariant(doubt.Remedy[0])}{doubt.Remedy[1..]}.");
        }

        Marks(text, place, us);
        return text.ToString().TrimEnd();
    }

    private static string Head(TiedPlace place, bool us) => place.State switch
    {
        TieState.Placed => $"{place.Name}: {Where(place.Spots[0].At, us)} ({place.Grade.ToString().ToLowerInvariant()}), {Ellipse(place.Spots[0], us)}",
        TieState.TwoPlaces => $"{place.Name}: one of two places",
        TieState.Ring => $"{place.Name}: one tie, somewhere on a ring",
        TieState.NoMark => $"{place.Name}: taped from marks whose points nobody noted",
        _ => $"{place.Name}: not tied",
    };

    private static string[] Row(TieLine tie, bool us) =>
    [
        tie.From, Tie.Say(tie.DistanceMetres, us), Tie.Say(tie.SpreadMetres, us), tie.Grade.ToString().ToLowerInvariant(),
        tie.FromAt is null ? "point unknown" : tie.OffMetres is not { } off ? string.Empty : $"{Tie.Say(Math.Round(off, 3), us)}{(tie.LeftOut ? ", left out" : string.Empty)}",
    ];

    private static void Marks(StringBuilder text, TiedPlace place, bool us)
    {
        if (place.Deciding is { } deciding)
        {
            text.AppendLine($"  To tell the two apart: tape from {deciding.Name}.");
        }

        if (place.BestMarks is { } marks)
        {
            text.AppendLine($"  Best marks: {marks.First.Name} (about {Tie.Say(marks.First.DistanceMetres, us)}) and {marks.Second.Name} (about {Tie.Say(marks.Second.DistanceMetres, us)}): give or take {Tie.Say(marks.LongMetres, us)} by {Tie.Say(marks.ShortMetres, us)}.");
        }
        else if (place.State == TieState.NotTied)
        {
            text.AppendLine(place.NotedAt is null ? "  Place it roughly on the plan to be told the best marks." : "  Fewer than two marks are on the plan within a tape's length: note corners and trees near it.");
        }
    }

    private static string Ellipse(TiedSpot spot, bool us) => string.Create(
        CultureInfo.InvariantCulture,
        $"95 in 100 within {Tie.Say(spot.LongMetres, us)} by {Tie.Say(spot.ShortMetres, us)}, the longer towards {spot.LongBearingDegrees:0}°");

    private static string Where(Position at, bool us) =>
        $"{Tie.Say(Math.Abs(at.EastMetres), us)} {(at.EastMetres < 0 ? "west" : "east")}, {Tie.Say(Math.Abs(at.NorthMetres), us)} {(at.NorthMetres < 0 ? "south" : "north")}";
}
