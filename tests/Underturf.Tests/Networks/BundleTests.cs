using Underturf.Networks.Wiring.Instruments;

namespace Underturf.Tests.Networks;

/// <summary>Detector and tone on an invented bundle: a common, one live conductor, two with coils that are off, one free.</summary>
public sealed class BundleTests
{
    private const int Common = 0;
    private const int Live = 1;
    private const int Idle = 2;
    private const int Free = 4;
    private const double ToneHertz = 1000;
    private const double CoilReactance = 2 * Math.PI * 60 * 0.1;

    private static readonly CouplingProbe probe = new(0.05);
    private static readonly LiveWireDetector detector = new() { Probe = probe, ThresholdVolts = 12, ThresholdSpreadShare = 0.3, MissProbability = 0.02, ImaginedProbability = 0.01 };
    private static readonly ToneReceiver receiver = new() { Probe = probe, FloorVolts = 0.01, EarSpreadShare = 0.2 };

    [Fact]
    public void A_lone_pair_shares_its_volts_so_that_the_common_may_light_the_detector()
    {
        // Exact: a floating supply between two conductors alike puts half of its volts on each.
        var pair = Made() with { Conductors = [new() { Name = "common" }, new() { Name = "live" }] };
        var state = Mains(pair);

        Assert.Equal(13, state.Volts(Live).Magnitude, 1e-6);
        Assert.Equal(13, state.Volts(Common).Magnitude, 1e-6);
        Assert.Equal(detector.LightsProbability(state, Live), detector.LightsProbability(state, Common), 1e-6);
    }

    [Fact]
    public void Coils_that_are_off_hold_their_conductors_at_the_common_and_the_live_one_stands_out()
    {
        var state = Mains(Made());

        Assert.InRange(state.KirchhoffResidualAmperes, 0, 1e-12);
        Assert.Equal(26 * double.Hypot(30, CoilReactance) / double.Hypot(31, CoilReactance), state.Volts(Live, Common).Magnitude, 1e-4);
        Assert.InRange(state.Volts(Idle, Common).Magnitude, 0, 0.01);
        Assert.InRange(detector.LightsProbability(state, Live), 0.9, 0.99);
        Assert.InRange(detector.LightsProbability(state, Idle), 0.01, 0.1);
        Assert.True(detector.LightsProbability(state, Free) < detector.LightsProbability(state, Live));
    }

    [Fact]
    public void Wet_insulation_hides_a_live_conductor_and_a_miss_is_always_possible()
    {
        var state = Mains(Made());

        Assert.InRange(detector.LightsProbability(state, Live, passShare: 0.1), 0.01, 0.02);
        Assert.True(detector.LightsProbability(state, Live) <= 1 - (0.02 * 0.99));
    }

    [Fact]
    public void Tone_is_strongest_on_the_fed_conductor_when_it_is_free_and_weaker_on_all_others()
    {
        var state = Tone(Made(), Free);
        var ratios = receiver.Ratios(state, Free);

        Assert.Equal(1, ratios[Free]);
        Assert.All(ratios.Where((_, i) => i != Free), r => Assert.InRange(r, 0.001, 0.9));
        Assert.Equal(Free, Loudest(state));
    }

    [Fact]
    public void A_shunt_to_ground_and_a_coil_take_the_tone_down_and_a_coil_carries_it_onward()
    {
        var free = Tone(Made(), Free).Volts(Free).Magnitude;
        var leaky = Tone(With(Made(), Free, c => c with { EarthOhms = 300 }), Free).Volts(Free).Magnitude;
        var coiled = Tone(Made(), Live);

        Assert.True(leaky < 0.3 * free);
        Assert.True(coiled.Volts(Live).Magnitude < free);
        Assert.True(coiled.Volts(Common).Magnitude > 0.5 * coiled.Volts(Live).Magnitude);
    }

    [Fact]
    public void A_freed_conductor_is_told_by_its_tone_and_one_on_its_coil_is_not()
    {
        var freed = receiver.LoudestProbabilities(Tone(Made(), Free));
        var coiled = receiver.LoudestProbabilities(Tone(Made(), Live));

        Assert.Equal(1, freed.Sum(), 1e-8);
        Assert.Equal(1, coiled.Sum(), 1e-8);
        Assert.InRange(freed[Free], 0.99, 1);
        Assert.InRange(coiled[Live], 0.1, 0.5);
    }

    [Fact]
    public void A_bundle_that_cannot_be_solved_is_refused_by_name()
    {
        var drive = new BundleDrive(Live, Common, 26, 1);

        Assert.Equal("frequency", BundleState.Solve(Made(), [drive], 0).Problem!.Place);
        Assert.Equal("drive", BundleState.Solve(Made(), [drive with { To = 9 }], 60).Problem!.Place);
        Assert.Equal("drive", BundleState.Solve(Made(), [drive with { SourceOhms = 0 }], 60).Problem!.Place);
        Assert.Equal("bundle", BundleState.Solve(Made() with { EarthFaradsPerMetre = 0 }, [drive], 60).Problem!.Place);
        Assert.Equal("conductor 'free'", BundleState.Solve(With(Made(), Free, c => c with { EarthOhms = 0 }), [drive], 60).Problem!.Place);
        Assert.Equal("conductor 'common'", BundleState.Solve(With(Made(), Common, c => c with { CoilOhms = 30 }), [drive], 60).Problem!.Place);
    }

    private static Bundle Made() => new()
    {
        LengthMetres = 100,
        PairFaradsPerMetre = 20e-12,
        EarthFaradsPerMetre = 50e-12,
        CommonNumber = Common,
        Conductors =
        [
            new() { Name = "common" },
            new() { Name = "live", CoilOhms = 30, CoilHenries = 0.1 },
            new() { Name = "second", CoilOhms = 30, CoilHenries = 0.1 },
            new() { Name = "third", CoilOhms = 30, CoilHenries = 0.1 },
            new() { Name = "free" },
        ],
    };

    private static Bundle With(Bundle bundle, int number, Func<BundleConductor, BundleConductor> change) =>
        bundle with { Conductors = [.. bundle.Conductors.Select((c, i) => i == number ? change(c) : c)] };

    private static BundleState Mains(Bundle bundle) => BundleState.Solve(bundle, [new BundleDrive(Live, Common, 26, 1)], 60).Value;

    private static BundleState Tone(Bundle bundle, int fed) => BundleState.Solve(bundle, [new BundleDrive(fed, Bundle.Earth, 8, 2000)], ToneHertz).Value;

    private static int Loudest(BundleState state)
    {
        var chances = receiver.LoudestProbabilities(state);
        return Enumerable.Range(0, chances.Count).MaxBy(i => chances[i]);
    }
}
