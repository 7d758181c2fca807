using System.Collections;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// One fault at one place with all its amounts, the smallest first. An amount becomes a suspect when somebody asks for it: most are ruled out
/// by their neighbours and never are.
/// </summary>
internal sealed class SuspectFamily : IReadOnlyList<Suspect>
{
    private readonly Suspect seat;
    private readonly Spread? unknown;
    private readonly Suspect?[] made;

    /// <param name="seat">The fault at its place, its weight that of all amounts together.</param>
    public SuspectFamily(Suspect seat)
    {
        this.seat = seat;
        unknown = seat.Passes == Passes.All || seat.Note is not null ? null : seat.Fault.Unknown;
        made = new Suspect?[unknown is null ? 1 : Strata.CountOf(seat.Fault)];
    }

    public int Count => made.Length;

    /// <summary>log of the prior odds of all amounts together.</summary>
    public double LogWeight => Math.Log(seat.Weight);

    /// <summary>log of the chance that it is there in no amount.</summary>
    public double LogNone => -Count * Math.Log(1 + (seat.Weight / Count));

    public Suspect this[int index] => made[index] ??= unknown is null ? seat : At(unknown, index);

    public IEnumerator<Suspect> GetEnumerator() => Enumerable.Range(0, Count).Select(i => this[i]).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private Suspect At(Spread ohms, int index)
    {
        var (amount, spread) = Strata.Of(seat.Fault, ohms, index);
        return seat with { Amount = amount, AmountLogSpread = spread, Weight = seat.Weight / Count };
    }
}
