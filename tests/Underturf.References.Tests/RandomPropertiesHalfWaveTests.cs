using Underturf.Networks.Wiring.HalfWave;
using Underturf.Numerics;
using Underturf.References.Tests.RandomProperties;
using Underturf.Simulation.SecondEngine;

namespace Underturf.References.Tests;

/// <summary>
/// Those of the random properties that have half-wave devices, up to tens of coils: a period with stations on against transients of ngspice
/// within 1 % (floors 30 microamperes and 50 mV), and an ohmmeter on them in both polarities within 0.01 % and 0.1 mV.
/// </summary>
public sealed class RandomPropertiesHalfWaveTests(ITestOutputHelper output)
{
    private readonly HalfWaveAgreement agreement = HalfWaveAgreement.OfProperty();
    private readonly Comparison leads = new(1e-4, 1e-4);
    private int overRange;

    [Fact]
    public void Every_current_and_voltage_through_a_period_agrees()
    {
        var (properties, mostCoils) = (0, 0);
        foreach (var property in PropertySet.WithDevices())
        {
            Compare(property, $"property {properties++}");
            mostCoils = Math.Max(mostCoils, property.Coils.Count);
        }

        output.WriteLine($"ngspice, half-wave on properties of up to {mostCoils} coils: {agreement.Count} averages, rms values and rectified means of {properties} properties compared; worst {agreement.WorstShare:P2} of the value above the floor.");
        Assert.Equal("", agreement.Disagreement ?? "");
        Assert.True(agreement.Count > 5_000 && mostCoils > 60 && properties > 15);
    }

    /// <summary>The small ones of <c>./prove half-wave</c>, without its clock: the same seeds.</summary>
    [Theory]
    [InlineData(7101, 2, 1)]
    [InlineData(7102, 2, 1)]
    [InlineData(7103, 10, 1)]
    public void The_properties_of_the_half_wave_study_agree(ulong seed, int coils, int devices)
    {
        Compare(new MixedProperty(new SeededGenerator(seed), coils, devices), $"seed {seed}");

        Assert.Null(agreement.Disagreement);
        Assert.True(agreement.Count >= 18);
    }

    [Fact]
    public void Every_ohmmeter_reading_agrees_in_either_polarity()
    {
        foreach (var property in PropertySet.WithDevices())
        {
            var dead = property.Circuit.With(property.Lifted());
            foreach (var far in property.Terminals.Take(4))
            {
                Read(dead, far, property.Commons.First());
                Read(dead, property.Commons.First(), far);
            }
        }

        output.WriteLine($"ngspice, ohmmeter on properties with diodes: {leads.Count} readings compared, worst {leads.WorstShare:0.0e0} above 0.1 mV; {overRange} over range in both.");
        Assert.Null(leads.Disagreement);
        Assert.True(leads.Count > 60 && overRange > 10);
    }

    private void Compare(MixedProperty property, string name)
    {
        var circuit = property.EveryOtherCoilHeld();
        var transient = new PropertyTransient(circuit, property.Returns.First(), property.Hertz);
        var solution = circuit.SolvePeriodic(property.Hertz).Value;
        Assert.InRange(solution.KirchhoffResidualAmperes, 0, 1e-7);
        transient.Compare(solution, transient.Run(), agreement, name);
    }

    private void Read(DiodeNetwork dead, int red, int black)
    {
        const double Volts = 2.5;
        const double Ohms = 400;
        var reference = Ngspice.Run($"{HalfWaveNetlist.Write(dead, black)}Vtest test 0 {Volts}\nRtest test n{red} {Ohms}\n", "op");
        var reading = dead.ReadOhms(red, black, TestDrive.ThroughOhms(Volts, Ohms, 1e5)).Value;
        Assert.InRange(reading.KirchhoffResidualAmperes, 0, 1e-8);
        var expected = reference[$"v(n{red})"].Real;
        Assert.Equal(expected > 1e5 * ((Volts - expected) / Ohms), reading.IsOverRange);
        overRange += reading.IsOverRange ? 1 : 0;
        leads.Add(expected, reading.Volts, dead.Wiring.NodeName(red));
    }
}
