using System.Globalization;
using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>A note of looking for something hidden, that is being typed: what it is about, where it was, in which way.</summary>
public sealed class SeekNote
{
    /// <summary>The thing, or the station whose valve it is.</summary>
    public required string About { get; init; }

    /// <summary>Name of a fault that the diagnosis puts into the ground and that nobody has noted as sought: that is noted before.</summary>
    public string? Begins { get; init; }

    /// <summary>One position, or the path of a signal.</summary>
    public IReadOnlyList<Position> Where { get; init; } = [];

    /// <summary>The same as spots, where there is no plan.</summary>
    public IReadOnlyList<string> Spots { get; init; } = [];

    /// <summary>How far from the position was searched.</summary>
    public double? WithinMetres { get; init; }

    /// <summary>Where that is, in words.</summary>
    public string Said { get; init; } = "";

    /// <summary>Minutes of each way of searching, as they are typed.</summary>
    public Dictionary<string, string> Minutes { get; init; } = [];

    /// <summary>The kind of sign or the way of tracing: a name in the practice book.</summary>
    public string Way { get; set; } = "";

    /// <summary>How a signal ended: a name in the practice book.</summary>
    public string Ended { get; set; } = "";

    /// <summary>True once something was typed over what the plan had filled in.</summary>
    public bool IsTouched { get; set; }

    /// <summary>What has to be noted before.</summary>
    public IEnumerable<Fact> First() => Begins is null ? [] : [new SoughtFact { Id = About, What = HiddenName.Fault, Label = Begins }];

    /// <summary>One for each way that minutes were spent in.</summary>
    public IReadOnlyList<SearchFact> Searches() =>
    [
        .. Minutes
            .Select(m => (Way: m.Key, Minutes: Typed(m.Value)))
            .Where(m => m.Minutes > 0)
            .Select(m => new SearchFact { How = m.Way, About = About, Where = Where.Count > 1 ? [Where[^1]] : Where, Spots = Spots, Within = WithinMetres is { } metres ? new Length(metres) : null, Minutes = m.Minutes }),
    ];

    public SignFact ToSign() => new() { How = Way, About = About, Where = Where.Count > 1 ? [Where[^1]] : Where, Spots = Spots };

    public TraceFact ToTrace() => new() { How = Way, Of = [About], Route = Where, Spots = Spots, Ended = Ended };

    /// <summary>A keyboard of another country writes a comma.</summary>
    private static double Typed(string text) =>
        double.TryParse(text.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var minutes) ? minutes : 0;
}
