using Underturf.Planning.Rework;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Planning.Repair;

/// <summary>What every repair of a property starts from.</summary>
internal sealed class RepairSite(Notebook notebook, Answers answers)
{
    private readonly Lazy<IReadOnlySet<string>> abandoned = new(() => new Site(notebook).Abandoned.ToHashSet(StringComparer.Ordinal));

    public Notebook Notebook => notebook;

    public Answers Answers => answers;

    public PropertyView View { get; } = notebook.History.Now;

    public PracticeBook Book => notebook.Book;

    public RepairingPractice Numbers => notebook.Book.Repairing;

    public decimal HourPrice => notebook.Book.Rework.HourPrice;

    public bool UsUnits => notebook.History.Facts.UsesUsUnits;

    /// <summary>Stations that water nothing.</summary>
    public IReadOnlySet<string> Abandoned => abandoned.Value;

    /// <summary>What valves have where no question is about this one: the rates of the book.</summary>
    public IReadOnlyDictionary<string, double> UsualFaults { get; } = notebook.Book.Faults.Select(f => (f.Id, f.Rate)).Concat(notebook.Book.Water.Faults.Select(f => (f.Id, f.Rate)))
        .Where(f => notebook.Book.Repairing.Causes.Any(c => c.Of.ContainsKey(f.Id)))
        .ToDictionary(f => f.Id, f => f.Rate, StringComparer.Ordinal);
}
