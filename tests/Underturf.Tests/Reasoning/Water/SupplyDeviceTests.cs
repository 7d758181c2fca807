using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning.Water;

namespace Underturf.Tests.Reasoning.Water;

/// <summary>What a meter and a backflow device take, by their kind and size or by a flow and its loss. All values invented but those of the practice book.</summary>
public sealed class SupplyDeviceTests
{
    private const double Psi = 6894.757;

    [Fact]
    public void A_pair_from_two_gauges_is_what_the_answer_says_of_that_flow()
    {
        var flow = With(new WaterSupplyFact { Id = "poc", BackflowAt = Flow("13.2086 gpm"), BackflowLoss = Pressure("9 psi") }).Notebook().Flow("1").Value;
        var device = Assert.Single(flow.Report!.Devices);
        Assert.Equal("backflow device (9 psi at 13.2 gpm noted): 9 psi with 13.2 gpm running", device.Say(new WaterSay(usUnits: true)));
    }

    [Fact]
    public void Kind_and_size_do_where_nobody_gauged()
    {
        var devices = With(new WaterSupplyFact { Id = "poc", Meter = Length("3/4"), BackflowKind = "reduced pressure", BackflowSize = Length("1") }).Notebook().Flow("1").Value.Report!.Devices;
        Assert.Equal(["meter", "backflow device"], devices.Select(d => d.Name));

        // By the book 15 psi at 30 gpm, by the square at 13.2 gpm 2.9; 8 psi of springs and 4.4 of 12.3 psi at 2.3 m/s.
        Assert.InRange(devices[0].Pascals / Psi, 2.8, 3.2);
        Assert.InRange(devices[1].Pascals / Psi, 8.5, 11);
        Assert.Contains("reduced pressure of 1 in, as is usual of its kind", devices[1].From, StringComparison.Ordinal);
    }

    [Fact]
    public void What_they_take_is_missing_at_the_supply_and_at_the_outlets()
    {
        var (bare, held) = (Heads(Orchard.Unpiped()), Heads(With(new WaterSupplyFact { Id = "poc", BackflowKind = "reduced pressure", BackflowSize = Length("1") })));
        Assert.InRange((bare.SupplyPascals - held.SupplyPascals) / Psi, 5, 10);
        Assert.True(held.OutletPascals < bare.OutletPascals && held.CubicMetresPerSecond < bare.CubicMetresPerSecond);
    }

    [Fact]
    public void Low_running_pressure_needs_no_fault_where_the_devices_take_it()
    {
        Orchard Read(Orchard orchard) => orchard.Read("static pressure", "65 psi").Meter("25 gpm", "s1").Read("running pressure", "37 psi", "s1");
        double Narrow(Orchard orchard) => orchard.Notebook().Water()!.Supply.Where(s => s.Faults.Contains("way-narrow")).Sum(s => s.Probability);
        var (bare, held) = (Narrow(Read(Orchard.Unpiped())), Narrow(Read(With(new WaterSupplyFact { Id = "poc", BackflowAt = Flow("25 gpm"), BackflowLoss = Pressure("16 psi"), MeterAt = Flow("25 gpm"), MeterLoss = Pressure("8 psi") }))));
        Assert.True(held < 0.5 * bare, $"{held} {bare}");
    }

    /// <summary>A running pressure fixes what is lost at its own flow; a spring takes the same at any other, friction does not.</summary>
    [Fact]
    public void What_was_gauged_at_one_flow_goes_to_another_by_the_device_and_not_by_friction_alone()
    {
        Orchard Read(Orchard orchard) => orchard.Read("static pressure", "65 psi").Meter("13 gpm", "s1").Read("running pressure", "53 psi", "s1").Read("running pressure", "53 psi", "s1").Meter("26 gpm", "s2");
        double Supply(Orchard orchard) => orchard.Notebook().Flow("2").Value.Stations[0].SupplyPascals / Psi;
        var (bare, held) = (Supply(Read(Orchard.Unpiped())), Supply(Read(With(new WaterSupplyFact { Id = "poc", BackflowKind = "reduced pressure", BackflowAt = Flow("13 gpm"), BackflowLoss = Pressure("10 psi") }))));
        Assert.True(held > bare + 8, $"{held} {bare}");
    }

    [Theory]
    [InlineData("12 gpm", null, "is noted with a flow, but not with what it loses then")]
    [InlineData(null, "12 psi", "is noted with what it loses, but not at what flow")]
    [InlineData("0 gpm", "12 psi", "is noted with no flow or no loss")]
    [InlineData("12 gpm", "0 psi", "is noted with no flow or no loss")]
    [InlineData("12 gpm", "12 bar", "would take")]
    [InlineData("12 L/min", "12 psi", "would take")]
    public void A_pair_that_cannot_be_says_why_and_counts_for_nothing(string? at, string? loss, string reason)
    {
        var notebook = With(new WaterSupplyFact { Id = "poc", BackflowAt = at is null ? null : Flow(at), BackflowLoss = loss is null ? null : Pressure(loss) }).Notebook();
        Assert.Contains(notebook.Problems, p => p.Place == "backflow device of 'poc'" && p.Reason.Contains(reason, StringComparison.Ordinal));
        Assert.Equal(Orchard.Unpiped().Notebook().Flow("1").Value.Stations[0].SupplyPascals, notebook.Flow("1").Value.Stations[0].SupplyPascals, 1e-6);
    }

    [Fact]
    public void A_size_or_kind_that_the_book_does_not_know_is_named()
    {
        var said = string.Join('\n', With(new WaterSupplyFact { Id = "poc", Meter = Length("7"), BackflowKind = "some box" }).Problems().Concat(With(new WaterSupplyFact { Id = "poc", BackflowKind = "double check" }).Problems()).Concat(With(new WaterSupplyFact { Id = "poc", BackflowSize = Length("1") }).Problems()));
        Assert.Contains("is of a size that the practice book does not know", said, StringComparison.Ordinal);
        Assert.Contains("is a 'some box', which the practice book does not know", said, StringComparison.Ordinal);
        Assert.Contains("with its kind, but not with its size", said, StringComparison.Ordinal);
        Assert.Contains("with its size, but not with its kind", said, StringComparison.Ordinal);
    }

    private static Orchard With(WaterSupplyFact supply) => Orchard.Unpiped().With(supply);

    private static StationFlow Heads(Orchard orchard) => orchard.With(new OutletFact { Id = "heads", Station = "s1", What = "spray head", Count = 10 }).Notebook().Flow("1").Value.Stations[0];

    private static Flow Flow(string text) => new(Units.Parse(text, Dimension.Flow).Value);

    private static Pressure Pressure(string text) => new(Units.Parse(text, Dimension.Pressure).Value);

    private static Length Length(string inches) => new(Units.From(inches == "3/4" ? 0.75 : double.Parse(inches, System.Globalization.CultureInfo.InvariantCulture), "in"));
}
