using Underturf.FieldLog;
using Underturf.Networks.Hydraulics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>Notes of pipes and outlets that nothing can be computed with.</summary>
internal static class WaterProblems
{
    /// <summary>A pipe so many times as long as all the mainline of a usual property was noted in a wrong unit.</summary>
    private const double MostMains = 100;

    public static IEnumerable<Problem> Of(PropertyHistory history, PracticeBook book) =>
        Pipes(history.Now, book.Water).Concat(Sizes(history.Now)).Concat(Behind(history.Now)).Concat(Apart(history.Now)).Concat(Outlets(history.Now, book.Water)).Concat(Settings(history)).Concat(Itself(history.Now)).Concat(IsolationRings.Problems(history.Now)).Concat(DeviceProblems.Of(history, book));

    private static IEnumerable<Problem> Pipes(PropertyView view, WaterPractice book)
    {
        foreach (var (id, pipe) in view.Pipes)
        {
            var place = $"pipe '{id}'";
            if (view.Identity.Of(pipe.From) == view.Identity.Of(pipe.To))
            {
                yield return new Problem(place, $"goes from '{pipe.From}' to itself", "Correct one of its ends");
            }

            if (pipe.Length is { Metres: <= 0 })
            {
                yield return new Problem(place, "is noted with a length of 0", "Note its length, or its course; paced is good enough");
            }

            if (pipe.Length is { } far && !CanBe(book, far.Metres))
            {
                yield return new Problem(place, $"is noted with a length of {Units.In(far.Metres, "km").ToString("#,0", System.Globalization.CultureInfo.InvariantCulture)} km, which no property has; it counts as losing nothing", "Look at the unit and note its length again; paced is good enough");
            }

            if (pipe.Inside is { Metres: <= 0 })
            {
                yield return new Problem(place, "is noted with no inside diameter", "Note its size as it is called, or measure it");
            }

            if (pipe.Series is { } series && book.Pipes.All(p => p.Name != series))
            {
                yield return new Problem(place, $"is made to '{series}', which the practice book does not know; the first of the book stands in", $"Use one of: {string.Join(", ", book.Pipes.Select(p => p.Name))}", Severity.Notice);
            }

            if (pipe.Size is { } size && PipeBores.OfSize(book, pipe.Series, size) is { Succeeded: false, Problem: { } problem })
            {
                yield return problem with { Place = place };
            }
        }
    }

    public static bool CanBe(WaterPractice book, double metres) => metres <= MostMains * book.MainMetres;

    private static IEnumerable<Problem> Sizes(PropertyView view) =>
        view.Valves.Where(v => v.Value.Size is { Metres: <= 0 }).Select(v => new Problem($"valve '{v.Key}'", "is noted with no size", "Note the size that is cast on it, for example 1 in"));

    /// <summary>Behind a station's valve lies its lateral, which has water only while the station runs.</summary>
    private static IEnumerable<Problem> Behind(PropertyView view)
    {
        foreach (var (id, pipe) in view.Pipes)
        {
            if (view.Valves.TryGetValue(view.Identity.Of(pipe.From), out var before) && view.Valves.TryGetValue(view.Identity.Of(pipe.To), out var behind) && before.Station is { } first && behind.Station is { } second && view.Identity.Of(first) != view.Identity.Of(second))
            {
                yield return new Problem($"pipe '{id}'", $"leads from {view.Name(pipe.From)} to {view.Name(pipe.To)}, so that {view.Name(second)} would have water only while {view.Name(first)} runs", "Where the mainline passes both, note a fitting before the first and let the pipes begin there", Severity.Notice);
            }
        }
    }

    /// <summary>What pipes lead to from nowhere.</summary>
    private static IEnumerable<Problem> Apart(PropertyView view)
    {
        if (view.Pipes.Count == 0)
        {
            yield break;
        }

        if (view.WaterSupplies.Count == 0)
        {
            yield return new Problem("pipes", "lead from no point of connection", "Note the point of connection, and the pipe that begins there", Severity.Notice);
            yield break;
        }

        var joined = Joined(view);
        var apart = view.Pipes.Where(p => !joined.Contains(view.Identity.Of(p.Value.From))).Select(p => p.Key).ToList();
        if (apart.Count > 0)
        {
            yield return new Problem($"pipe{(apart.Count == 1 ? string.Empty : "s")} {string.Join(", ", apart.Select(p => $"'{p}'"))}", "is joined to no point of connection by the pipes that are noted", "Note the pipe between, or correct an end", Severity.Notice);
        }
    }

    private static HashSet<string> Joined(PropertyView view)
    {
        var joined = view.WaterSupplies.Keys.ToHashSet(StringComparer.Ordinal);
        for (var before = -1; joined.Count != before;)
        {
            before = joined.Count;
            foreach (var pipe in view.Pipes.Values)
            {
                var (from, to) = (view.Identity.Of(pipe.From), view.Identity.Of(pipe.To));
                if (joined.Contains(from) || joined.Contains(to))
                {
                    joined.Add(from);
                    joined.Add(to);
                }
            }
        }

        return joined;
    }

    private static IEnumerable<Problem> Outlets(PropertyView view, WaterPractice book) => Unknown(view, book).Concat(Elsewhere(view));

    /// <summary>On the valve of another station.</summary>
    private static IEnumerable<Problem> Elsewhere(PropertyView view) =>
        from outlet in view.Outlets
        where IsElsewhere(view, outlet.Value)
        let valve = view.Identity.Of(outlet.Value.Fitting!)
        select new Problem($"outlets '{outlet.Key}'", $"are of {view.Name(outlet.Value.Station)}, but noted on {view.Name(valve)}, which is of {view.Name(view.Valves[valve].Station!)}; they count as right behind the valve of {view.Name(outlet.Value.Station)}", "Note again what they are on, or of which station they are", Severity.Notice);

    /// <summary>Whether outlets are noted on the valve of another station than their own, so that they would water while that runs.</summary>
    public static bool IsElsewhere(PropertyView view, OutletFact outlet) =>
        outlet.Fitting is { } on && view.Valves.TryGetValue(view.Identity.Of(on), out var valve) && valve.Station is { } station && view.Identity.Of(station) != view.Identity.Of(outlet.Station);

    private static IEnumerable<Problem> Unknown(PropertyView view, WaterPractice book) =>
        from outlet in view.Outlets
        where book.Outlets.All(o => o.Name != outlet.Value.What) && outlet.Value.Flow is null
        select new Problem($"outlets '{outlet.Key}'", $"are '{outlet.Value.What}', which the practice book does not know, and no flow is noted; they count for nothing", $"Note the flow of one, or use one of: {string.Join(", ", book.Outlets.Select(o => o.Name))}", Severity.Notice);

    private static IEnumerable<Problem> Itself(PropertyView view) => view.IsolationValves
        .Where(i => i.Value.Shuts.Any(s => view.Identity.Of(s) == i.Key))
        .Select(i => new Problem($"isolation valve '{i.Key}'", "is noted to shut off itself; that counts for nothing", "Note what lies behind it", Severity.Notice));

    private static IEnumerable<Problem> Settings(PropertyHistory history) =>
        from setting in history.Facts.Settings
        let id = history.Now.Identity.Of(setting.Fact.Of)
        where history.Now.Knows(id) && !history.Now.IsolationValves.ContainsKey(id) && !history.Now.Valves.ContainsKey(id)
        select new Problem(setting.Entry.ToString(), $"turns '{setting.Fact.Of}', which is no valve", "Strike it and name the isolation valve or valve that was turned");
}

/// <summary>Inside diameters of pipes as they are noted.</summary>
internal static class PipeBores
{
    /// <summary>As measured, or of its size.</summary>
    public static double? Metres(WaterPractice book, PipeFact pipe) =>
        pipe.Inside is { Metres: > 0 } inside ? inside.Metres
        : pipe.Size is { } size && OfSize(book, pipe.Series, size) is { Succeeded: true, Value: var metres } ? metres
        : null;

    public static Outcome<double> OfSize(WaterPractice book, string? series, string size) =>
        PipeSize.InsideDiameterMetres(Enum.Parse<PipeSeries>(Of(book, series).Series), size.Replace("in", string.Empty, StringComparison.Ordinal).Replace("\"", string.Empty, StringComparison.Ordinal));

    public static PipePractice Of(WaterPractice book, string? series) => book.Pipes.FirstOrDefault(p => p.Name == series) ?? book.Pipes[0];
}
