namespace Underturf.Quantities;

/// <summary>A number whose type says what it is a number of. The value inside is SI.</summary>
public interface IQuantity<TSelf>
    where TSelf : struct, IQuantity<TSelf>
{
    static abstract Dimension Dimension { get; }

    /// <summary>The value in the SI unit of its dimension.</summary>
    double Si { get; }

    static abstract TSelf FromSi(double si);

    /// <summary>Reads "240 ft" or "73 m". A problem names the text and the units that would do.</summary>
    static virtual Outcome<TSelf> Parse(string text)
    {
        var si = Units.Parse(text, TSelf.Dimension);
        return si.Succeeded ? TSelf.FromSi(si.Value) : si.Problem!;
    }
}
