using System.Globalization;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Telling;

namespace Underturf.Cli;

/// <summary>Where hidden things lie, as text for a terminal.</summary>
internal static class LocationText
{
    private const int MostSteps = 8;

    public static string Write(LocationAnswer location, bool us) => string.Join(Environment.NewLine, (IEnumerable<string>)
    [
        $"{location.Things.Count} hidden {(location.Things.Count == 1 ? "thing" : "things")}.",
        string.Empty,
        .. location.Things.SelectMany(t => Thing(t, us)),
        .. Choices(location),
        .. Route(location, us),
        .. Learned(location, us),
        $"Engine {location.Engine}, practice book {location.Book}. Utility marks first where you probe or dig. Local codes and licensed practice prevail.",
    ]);

    private static IEnumerable<string> Thing(HiddenThing thing, bool us)
    {
        yield return $"{thing.Name}: {string.Join(", ", thing.Credible.Select(c => $"{Say.Share(c.Probability)} within {Ground(c.SquareMetres, us)}"))}{(thing.None > 0.01 ? $"; {Say.Share(thing.None)} that there is none" : string.Empty)}";
        foreach (var place in thing.Places)
        {
            yield return $"  {Say.Share(place.Probability),10}  {place.Where}{(place.At is { } at ? string.Create(CultureInfo.InvariantCulture, $" ({at.EastMetres:0}, {at.NorthMetres:0}), {Say.Length(place.AcrossMetres, us)} across") : string.Empty)}";
        }

        if (thing.Notes.Count > 0)
        {
            yield return "      Of the first of these";
        }

        foreach (var note in thing.Notes)
        {
            yield return $"      {string.Join(", ", note.Entries)}: {note.Say}; {EvidenceScale.Say(note.Weight)}";
        }

        yield return string.Empty;
    }

    private static IEnumerable<string> Route(LocationAnswer location, bool us)
    {
        if (location.Route is not { } route)
        {
            yield return SearchWords.NoSearch(location);
            yield return string.Empty;
            yield break;
        }

        yield return "SEARCH";
        foreach (var caution in route.Steps.SelectMany(s => s.Efforts).Select(e => e.Caution).Where(c => c.Length > 0).Distinct())
        {
            yield return $"  {caution}";
        }

        foreach (var step in route.Told.Take(MostSteps))
        {
            var efforts = string.Join(", then ", step.Efforts.Select(e => string.Create(CultureInfo.InvariantCulture, $"{e.How} {e.Minutes:0.#} min")));
            yield return string.Create(CultureInfo.InvariantCulture, $"  {Say.Share(step.Found),10}  {step.Where}, {Say.Length(step.AcrossMetres, us)} across: {efforts} ({step.WalkMinutes:0.#} min to walk)");
        }

        var more = route.Steps.Count - Math.Min(MostSteps, route.Told.Count);
        if (more > 0)
        {
            yield return $"              and {more} more on the way";
        }

        yield return string.Create(CultureInfo.InvariantCulture, $"  {SearchWords.Found(location, route)}; until found or given up {route.EffortMinutes:0} min of searching and {route.TravelMinutes:0} min of walking on average. {SearchWords.Stop}");
        yield return string.Empty;
    }

    private static IEnumerable<string> Choices(LocationAnswer location)
    {
        if (location.Choices.Count == 0)
        {
            yield break;
        }

        yield return "NEXT, by expected minutes until found or given up";
        foreach (var choice in location.Choices)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"  {choice.LossMinutes,5:0}  {choice.Say}{(choice.At is { } at ? $", {at}" : string.Empty)}{(choice.Minutes > 0 ? $": {choice.Minutes:0} min" : string.Empty)}");
            if (choice.Caution.Length > 0)
            {
                yield return $"           {choice.Caution}";
            }
        }

        yield return string.Empty;
    }

    private static IEnumerable<string> Learned(LocationAnswer location, bool us)
    {
        if (location.Learned.Count == 0)
        {
            yield break;
        }

        yield return $"What the {location.Found} things found on this property teach:";
        foreach (var effect in location.Learned)
        {
            var within = effect.ReachMetres > 0 ? $" within {Say.Length(effect.ReachMetres, us)}" : string.Empty;
            yield return string.Create(CultureInfo.InvariantCulture,
                $"  {effect.Say}: {effect.FoundNear} of {location.Found} lie there{within}, as does {Say.Share(effect.GroundNear)} of the ground; {Math.Exp(effect.Here):0.#} times likelier than elsewhere, usually {Math.Exp(effect.Usual):0.#}");
        }

        yield return string.Empty;
    }

    private static string Ground(double squareMetres, bool us) => us
        ? string.Create(CultureInfo.InvariantCulture, $"{Units.In(squareMetres, "ft2"):#,0} ft2")
        : string.Create(CultureInfo.InvariantCulture, $"{squareMetres:#,0} m2");
}
