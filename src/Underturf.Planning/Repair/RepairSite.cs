using System.Globalization;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Planning.Repair;

/// <summary>What every repair of a property starts from.</summary>
internal sealed class RepairSite(Notebook notebook, Answers answers)
{
    public Notebook Notebook => notebook;

    public Answers Answers => answers;

    public PropertyView View { get; } = notebook.History.Now;

    public PracticeBook Book => notebook.Book;

    public RepairingPractice Numbers => notebook.Book.Repairing;

    public decimal HourPrice => notebook.Book.Rework.HourPrice;

    public bool UsUnits => notebook.History.Facts.UsesUsUnits;

    /// <summary>"2 in" or "50 mm".</summary>
    public string Small(double millimetres) => Say.Small(millimetres / 1000, UsUnits);

    /// <summary>"18 cu in" or "0.30 l".</summary>
    public string Room(double cubicCentimetres) => UsUnits
        ? string.Create(CultureInfo.InvariantCulture, $"{cubicCentimetres * Math.Pow(Units.In(0.01, "in"), 3):0} cu in")
        : string.Create(CultureInfo.InvariantCulture, $"{cubicCentimetres / 1000:0.00} l");

    /// <summary>What valves have where no question is about this one: the rates of the book.</summary>
    public IReadOnlyDictionary<string, double> UsualFaults { get; } = notebook.Book.Faults.Select(f => (f.Id, f.Rate)).Concat(notebook.Book.Water.Faults.Select(f => (f.Id, f.Rate)))
        .Where(f => notebook.Book.Repairing.Causes.Any(c => c.Of.ContainsKey(f.Id)))
        .ToDictionary(f => f.Id, f => f.Rate, StringComparer.Ordinal);
}
