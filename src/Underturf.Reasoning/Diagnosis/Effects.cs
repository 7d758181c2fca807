using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>A circuit that can be changed as faults change it. A part that it does not have is left out in silence.</summary>
internal interface IFaultyCircuit
{
    /// <summary>True where a supply feeds it, false in front of an ohmmeter.</summary>
    bool IsFed { get; }

    /// <summary>True where the ohmmeter's leads are swapped.</summary>
    bool IsReversed { get; }

    /// <summary>True where the ohmmeter stands on another common.</summary>
    bool IsOnOtherCommon { get; }

    /// <summary>The suspect's part does not conduct.</summary>
    void Break(Suspect suspect);

    /// <summary>The suspect's part is joined to the common on which the ohmmeter stands.</summary>
    void JoinOther();

    /// <summary>Ohms in series with the suspect's part.</summary>
    void AddSeries(Suspect suspect, double ohms);

    /// <summary>So many more coils in series with the suspect's part.</summary>
    void AddCoils(Suspect suspect, int count);

    /// <summary>The suspect's coil keeps a share of its ohms.</summary>
    void ShortTurns(Suspect suspect, double share, double logSpread);

    /// <summary>The suspect's coil has another's ohms: so many times its own.</summary>
    void ScaleCoil(Suspect suspect, double ratio, double logSpread);

    /// <summary>The suspect's run has so many times the ohms that were noted, conductors and common.</summary>
    void ScaleRun(Suspect suspect, double ratio, double logSpread);

    /// <summary>So many metres of wire more before the suspect's coil.</summary>
    void MoveOn(Suspect suspect, double metres, double logSpread);

    void Leak(Suspect suspect, double ohms, double logSpread);

    void TouchCommon(Suspect suspect, double ohms, double logSpread);

    /// <summary>So many more valves at the suspect's place.</summary>
    void Branch(Suspect suspect, int count);

    /// <summary>Two stations are joined.</summary>
    void Join();

    /// <summary>Half waves pass the suspect's part: a meter shows another amount than of a sine.</summary>
    void Rectify(Suspect suspect);

    /// <summary>Ohms in series with the supply.</summary>
    void WeakenSupply(double ohms, double logSpread);
}

/// <summary>Reads the effects that the practice book gives a fault, and never its id.</summary>
internal static class Effects
{
    /// <summary>Turns left of a coil whose turns are shorted are never quite all.</summary>
    private const double MostShare = 0.99;

    public static void Apply(Suspect suspect, IFaultyCircuit circuit)
    {
        var fault = suspect.Fault;
        if (fault.Open || IsOffCommon(suspect, circuit) || IsBlocked(suspect, circuit))
        {
            circuit.Break(suspect);
        }

        if (fault.OtherCommon && circuit.IsOnOtherCommon)
        {
            circuit.JoinOther();
        }

        if (fault.SeriesOhms is not null || (fault.DcSeriesOhms is not null && suspect.Passes != Passes.All && !circuit.IsFed))
        {
            circuit.AddSeries(suspect, suspect.Amount);
        }

        if (fault.DcSeriesOhms is not null && circuit.IsFed)
        {
            circuit.Rectify(suspect);
        }

        if (fault.SeriesCoils is { } coils)
        {
            circuit.AddCoils(suspect, coils - 1);
        }

        Across(suspect, fault, circuit);
    }

    /// <summary>Lifted for ohms, another common leads nowhere; where the controller feeds it too, the valve runs.</summary>
    private static bool IsOffCommon(Suspect suspect, IFaultyCircuit circuit) =>
        suspect.Fault.OtherCommon && !circuit.IsOnOtherCommon && !(circuit.IsFed && suspect.Seat.IsLive);

    private static bool IsBlocked(Suspect suspect, IFaultyCircuit circuit) =>
        !circuit.IsFed && suspect.Passes is Passes.Forward or Passes.Backward && circuit.IsReversed == (suspect.Passes == Passes.Forward);

    private static void Across(Suspect suspect, FaultPractice fault, IFaultyCircuit circuit)
    {
        if (fault.CoilFactor is not null)
        {
            circuit.ShortTurns(suspect, Math.Min(suspect.Amount, MostShare), suspect.AmountLogSpread);
        }

        if (fault.CoilRatio is not null)
        {
            circuit.ScaleCoil(suspect, suspect.Amount, suspect.AmountLogSpread);
        }

        if (fault.RunRatio is not null)
        {
            circuit.ScaleRun(suspect, suspect.Amount, suspect.AmountLogSpread);
        }

        if (fault.MoreMetres is not null)
        {
            circuit.MoveOn(suspect, suspect.Amount, suspect.AmountLogSpread);
        }

        if (fault.EarthOhms is not null)
        {
            circuit.Leak(suspect, suspect.Amount, suspect.AmountLogSpread);
        }

        if (fault.ToCommonOhms is not null)
        {
            circuit.TouchCommon(suspect, suspect.Amount, suspect.AmountLogSpread);
        }

        // Behind a lost diode the meter finds the bare coil, and next to nothing beside it through the other's diode.
        if (suspect.MoreCoils > 0 && (circuit.IsFed || suspect.Passes != Passes.All))
        {
            circuit.Branch(suspect, suspect.MoreCoils);
        }

        if (fault.Joins)
        {
            circuit.Join();
        }

        if (fault.SourceOhms is not null)
        {
            circuit.WeakenSupply(suspect.Amount, suspect.AmountLogSpread);
        }
    }
}
