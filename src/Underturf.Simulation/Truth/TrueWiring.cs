using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation;

/// <summary>What a made-up property's wiring really is: the wires of each station, what is wrong with them, and the numbers behind.</summary>
internal sealed class TrueWiring
{
    private readonly Dictionary<string, StationPath> paths;
    private readonly Dictionary<string, FaultPractice> practices;
    private readonly IReadOnlyDictionary<string, string>? commons;

    /// <param name="commons">The common of each station, where a controller has several.</param>
    public TrueWiring(IReadOnlyList<StationPath> paths, IReadOnlyList<TrueFault> faults, PracticeBook book, TrueNumbers numbers, IReadOnlyDictionary<string, string>? commons = null)
    {
        this.commons = commons;
        Paths = paths;
        this.paths = paths.ToDictionary(p => p.Station, StringComparer.Ordinal);
        practices = book.Faults.ToDictionary(f => f.Id, StringComparer.Ordinal);
        Book = book;
        Numbers = numbers;
        Faults = [.. faults.Select(Drawn)];
    }

    public IReadOnlyList<StationPath> Paths { get; }

    public PracticeBook Book { get; }

    public TrueNumbers Numbers { get; }

    /// <summary>With what half-wave devices are made of.</summary>
    public IReadOnlyList<TrueFault> Faults { get; }

    public StationPath Path(string station) => paths[station];

    public FaultPractice Practice(TrueFault fault) => practices[fault.Fault];

    public IEnumerable<TrueFault> Of(FaultScope scope) => Faults.Where(f => Practice(f).Scope == scope);

    /// <summary>Name of the common that a station's coils return by.</summary>
    public string CommonOf(string station) => commons?[station] ?? Path(station).Controller;

    /// <summary>
    /// The other common of the controller that passes a station's valve, where its coil is joined to a wrong common; nothing where none
    /// passes and the coil hangs on a dead one.
    /// </summary>
    public string? WrongCommon(string station)
    {
        var valve = Path(station).Valves[0].Place;
        return Faults.Any(f => IsWrongCommon(f) && f.Station == station)
            ? Paths.Where(p => p.Controller == Path(station).Controller && CommonOf(p.Station) != CommonOf(station) && p.LegTo(valve) >= 0).Select(p => CommonOf(p.Station)).FirstOrDefault()
            : null;
    }

    /// <summary>The one fault that is another thing where there is another common than where there is none.</summary>
    public bool IsWrongCommon(TrueFault fault) => Practice(fault).OtherCommon;

    /// <summary>Whether a conductor touches the common inside a stretch, not at an end of it.</summary>
    public bool IsInside(TrueFault fault) => Practice(fault).TouchesInside;

    /// <summary>Where conductors touch the common inside the stretch that ends at a place.</summary>
    public IEnumerable<TrueFault> ContactsInside(string place) => Faults.Where(f => f.Place == place && IsInside(f));

    /// <summary>How far along its stretch such a contact lies, as a share of it.</summary>
    public double ShareAlong(TrueFault contact) => Numbers.Even($"along {contact.Station} {contact.Place}");

    /// <summary>Whether a fault of no station sits on a station's controller.</summary>
    public bool Concerns(TrueFault fault, string station) => fault.Controller is null || fault.Controller == Path(station).Controller;

    /// <summary>Whether a station returns by the place of a fault of a common.</summary>
    public bool Passes(TrueFault shared, string station) =>
        (shared.Common is null || shared.Common == CommonOf(station)) && Path(station).LegTo(shared.Place!) >= 0;

    public TrueFault? DeviceAt(string station, string place) => Faults.FirstOrDefault(f => f.Device is not null && f.Station == station && f.Place == place);

    /// <summary>The fault by which the terminals of two stations are exchanged, one of them this.</summary>
    public TrueFault? SwapOf(string station) => Faults.FirstOrDefault(f => Practice(f).Swaps && (f.Station == station || f.Other == station));

    /// <summary>The station whose conductor sits on a station's terminal: the other's where the two are swapped.</summary>
    public string FedBy(string station) => SwapOf(station) is { } swap ? Partner(swap, station) : station;

    public static string Partner(TrueFault pair, string station) => pair.Station == station ? pair.Other! : pair.Station!;

    /// <summary>Whether diodes are joined to what a station's terminal feeds.</summary>
    public bool MeetsDiodes(string station)
    {
        var fed = FedBy(station);
        var joined = Faults.Where(f => Practice(f).Joins && (f.Station == fed || f.Other == fed)).Select(f => Partner(f, fed)).Append(fed);
        return Faults.Any(f => f.Device is not null && joined.Contains(f.Station));
    }

    /// <summary>What is wrong with any of some stations, what they share included.</summary>
    public IReadOnlyList<TrueFault> FaultsOf(IReadOnlyList<string> stations) => [.. Faults.Where(f => f.Station is { } own
        ? stations.Contains(own) || (f.Other is { } other && stations.Contains(other))
        : stations.Any(s => f.Place is null ? Concerns(f, s) : Passes(f, s)))];

    /// <summary>The same wires after some of it was mended.</summary>
    public TrueWiring Without(IEnumerable<TrueFault> mended) => new(Paths, [.. Faults.Except(mended)], Book, Numbers, commons);

    /// <summary>Other wires and faults in the same ground, with the same numbers.</summary>
    public TrueWiring Reworked(IReadOnlyList<StationPath> paths, IReadOnlyList<TrueFault> faults) => new(paths, faults, Book, Numbers, commons);

    private TrueFault Drawn(TrueFault fault) => Practice(fault).DcSeriesOhms is null || fault.Device is not null
        ? fault
        : fault with { Amount = 0, Device = TrueDevice.Draw(Numbers, $"device {fault.Station} {fault.Place}") };
}
