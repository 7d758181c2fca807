using System.Collections;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// One fault at one place with all its amounts, the smallest first. An amount becomes a suspect when somebody asks for it: most are ruled out
/// by their neighbours and never are.
/// </summary>
internal sealed class SuspectFamily : IReadOnlyList<Suspect>
{
    private readonly Suspect seat;
    private readonly Suspect?[] made;

    /// <param name="seat">The fault at its place, its weight that of all amounts together.</param>
    public SuspectFamily(Suspect seat)
    {
        this.seat = seat;
        made = new Suspect?[IsSpread ? Strata.Count : 1];
    }

    /// <summary>Something that has no amount, or just one that is known.</summary>
    private bool IsSpread => seat.Fault?.Unknown is not null && seat.Passes != Passes.All && seat.Note is null;

    public int Count => made.Length;

    /// <summary>log of the chance that it is there in no amount.</summary>
    public double LogNone => -Count * Math.Log(1 + (seat.Weight / Count));

    public Suspect this[int index] => made[index] ??= IsSpread ? At(index) : seat;

    public IEnumerator<Suspect> GetEnumerator() => Enumerable.Range(0, Count).Select(i => this[i]).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private Suspect At(int index)
    {
        var (amount, spread) = Strata.Of(seat.Fault!.Unknown!, index);
        return seat with { Amount = amount, AmountLogSpread = spread, Weight = seat.Weight / Count };
    }
}
