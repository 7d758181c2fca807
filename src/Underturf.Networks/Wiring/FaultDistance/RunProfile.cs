using Underturf.Quantities;

namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>
/// Ohms or farads added up along a run, and the place where the sum reaches a given amount: a broken line and its inverse, with the lengths
/// and the temperature as unknowns.
/// </summary>
internal sealed class RunProfile
{
    private const double SpreadsBeyondEnds = 3;
    private const double RoundingShare = 1e-9;

    private readonly Run run;
    private readonly Uncertain[] lengthsMetres;
    private readonly Uncertain warmerKelvins;

    internal RunProfile(Run run)
    {
        this.run = run;
        lengthsMetres = [.. run.Stretches.Select(s => Unknowns.Add($"length of {s.Name}", s.LengthMetres, s.LengthMetres * s.LengthSpreadShare))];
        warmerKelvins = Unknowns.Add("temperature of the copper", 0, run.TemperatureSpreadKelvins);
    }

    internal Unknowns Unknowns { get; } = new();

    /// <summary>Ohms a metre of the faulty conductor, by stretch.</summary>
    internal Uncertain[] FaultyOhmsPerMetre() => OhmsPerMetre(s => s.Size);

    /// <summary>Ohms a metre of the return conductor, by stretch.</summary>
    internal Uncertain[] ReturnOhmsPerMetre() => OhmsPerMetre(s => s.ReturnSize);

    internal Uncertain Total(Uncertain[] perMetre) =>
        lengthsMetres.Zip(perMetre, (length, each) => length * each).Aggregate((Uncertain)0, (sum, part) => sum + part);

    /// <summary>
    /// The place at which the amount is used up. Before the near end and after the far end the line goes on as in the nearest stretch; a
    /// place that lies outside by more than its spread can explain is a problem.
    /// </summary>
    internal Outcome<DistanceEstimate> PlaceWhere(Uncertain[] perMetre, Uncertain amount, string method)
    {
        Uncertain passedMetres = 0;
        for (var k = 0; k < perMetre.Length - 1; k++)
        {
            var here = lengthsMetres[k] * perMetre[k];
            if (amount.Value <= here.Value)
            {
                return Within(passedMetres + (amount / perMetre[k]), method);
            }

            amount -= here;
            passedMetres += lengthsMetres[k];
        }

        return Within(passedMetres + (amount / perMetre[^1]), method);
    }

    private Outcome<DistanceEstimate> Within(Uncertain metres, string method)
    {
        var beyond = metres - lengthsMetres.Aggregate((Uncertain)0, (sum, length) => sum + length);
        var rounding = RoundingShare * run.LengthMetres;
        if (metres.Value < -(SpreadsBeyondEnds * metres.Spread) - rounding)
        {
            return new Problem(
                method,
                $"puts the fault {-metres.Value:0.#} m before the near end",
                "Check which lead is on which conductor, and what is taken off for leads and contacts");
        }

        return beyond.Value > (SpreadsBeyondEnds * beyond.Spread) + rounding
            ? new Problem(
                method,
                $"puts the fault {beyond.Value:0.#} m beyond the far end",
                "Check which lead is on which conductor and the lengths and gauges, or look for the fault on the other conductor")
            : Unknowns.Estimate(metres);
    }

    private Uncertain[] OhmsPerMetre(Func<Stretch, WireSize> size) =>
    [
        .. run.Stretches.Select(s =>
            CopperWire.OhmsPerMetre(size(s), s.TemperatureKelvins)
            + (warmerKelvins * (CopperWire.OhmMetresAt20C * CopperWire.PerKelvinAt20C / size(s).AreaSquareMetres))),
    ];
}
