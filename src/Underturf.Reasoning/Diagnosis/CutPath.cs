using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>A station's wires with one stretch cut in two halves, so that something can sit inside it.</summary>
internal static class CutPath
{
    /// <summary>Standard deviation of where something sits in a stretch, any part of it being as likely, as a share of its length.</summary>
    public static readonly double ShareSpread = 1 / Math.Sqrt(12);

    /// <returns>The wires with the half toward the controller in the stretch's place; the other half comes next and keeps the stretch's name.</returns>
    public static StationPath Of(StationPath path, int stretch)
    {
        int Moved(int leg) => leg < stretch ? leg : leg + 1;
        var half = path.Legs[stretch] with { LengthMetres = path.Legs[stretch].LengthMetres / 2 };
        var middle = $"inside {half.To}";
        IEnumerable<Leg> halves = [half with { To = middle }, half with { From = middle, Parent = stretch }];
        var beyond = path.Legs.Skip(stretch + 1).Select(l => l with { Parent = Moved(l.Parent) });
        return path with
        {
            Legs = [.. path.Legs.Take(stretch), .. halves, .. beyond],
            Valves = [.. path.Valves.Select(v => v with { Leg = Moved(v.Leg) })],
        };
    }
}
