using System.Globalization;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>What all papers of one notebook are made from, worked out once.</summary>
internal sealed class PaperMatter
{
    public const string Prevail = "Local codes and licensed practice prevail.";

    private readonly Dictionary<string, Grade> grades = [];

    public PaperMatter(Notebook notebook)
        : this(notebook, notebook.Answer())
    {
    }

    public PaperMatter(Notebook notebook, Answers answers)
    {
        Notebook = notebook;
        Answers = answers;
        Stock = Stock.Of(notebook.History);
        foreach (var entry in notebook.Log.Standing)
        {
            grades[entry.Id.ToString()] = entry.Fact?.Sure ?? Grade.Unknown;
        }
    }

    public Notebook Notebook { get; }

    public Answers Answers { get; }

    public Stock Stock { get; }

    public Facts Facts => Notebook.History.Facts;

    public PropertyView View => Notebook.History.Now;

    /// <summary>Where taped distances put things.</summary>
    public TiedPlaces Tied => Notebook.Tied;

    public bool UsesUsUnits => Facts.UsesUsUnits;

    public string PropertyName => PlainText.Of(Facts.Title) is { Length: > 0 } name ? name : Facts.None.Title;

    /// <summary>The moment the papers bear: the last note's; where there is no note, the start of 2000.</summary>
    public DateTimeOffset Made => Notebook.Log.LastNoted is { IsWritable: true } noted ? Facts.Zone.Told(noted.Moment) : new DateTimeOffset(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>"2 April 2031 to 3 April 2031", by the clock of the property.</summary>
    public string Dates
    {
        get
        {
            var days = Notebook.Log.Standing.Select(e => Facts.Zone.Told(e.At).Date).ToList();
            return days.Count == 0 ? "no notes yet"
                : days.Min() == days.Max() ? Day(days.Max())
                : $"{Day(days.Min())} to {Day(days.Max())}";
        }
    }

    /// <summary>The people as the log names them; where it names nobody, the names of their note streams.</summary>
    public IReadOnlyList<string> Writers => Distinct(e => e.Fact?.By) is { Count: > 0 } people ? people : Distinct(e => e.Id.Writer);

    /// <summary>Grade of the note with this id ("writer/seq").</summary>
    public Grade GradeOf(string entry) => grades.GetValueOrDefault(entry, Grade.Unknown);

    private List<string> Distinct(Func<Entry, string?> name) =>
        [.. Notebook.Log.Standing.Select(name).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    public static string Day(DateTime day) => day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    public static string Moment(DateTimeOffset at) => at.ToString("d MMMM yyyy, HH:mm", CultureInfo.InvariantCulture);

    public static string Minutes(double minutes) => string.Create(CultureInfo.InvariantCulture, $"{Math.Clamp(minutes, -1e6, 1e6):0} min");
}
