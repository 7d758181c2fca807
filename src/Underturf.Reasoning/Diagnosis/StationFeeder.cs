using Underturf.Networks.Wiring.Feeders;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// One station's circuit, conductor and common side by side, as a radial feeder: laid out once, changed and read for each suspect. It gives what
/// the general bench gives and is a hundred times quicker; what joins two stations needs the bench.
/// </summary>
internal sealed class StationFeeder
{
    private readonly FeederVariation work;
    private readonly FeederReading reading;
    private readonly Dictionary<(Measure, string?, bool), Prediction> sound = [];

    /// <param name="ends">Legs at whose far ends a conductor ends: the insulation of a whole conductor is reckoned there.</param>
    /// <param name="cut">Of a stretch cut in two (<see cref="CutPath"/>) the half toward the controller; -1 where none is.</param>
    public StationFeeder(StationPath path, PracticeBook book, Supply supply, Unknowns unknowns, IReadOnlyList<int> ends, int cut)
    {
        (Path, Book, Supply, Ends, Cut) = (path, book, supply, ends, cut);
        var legs = path.Legs;
        var count = legs.Count;
        (ConductorCopper, CommonCopper, LengthSpread, Lengths) = (new double[count], new double[count], new double[count], new int[count]);
        for (var i = 0; i < count; i++)
        {
            ConductorCopper[i] = BenchLayout.WireOhms(book, legs[i].StationSize, legs[i].LengthMetres);
            CommonCopper[i] = BenchLayout.WireOhms(book, legs[i].CommonSize, legs[i].LengthMetres);
            LengthSpread[i] = legs[i].OhmsLogSpread;
            Lengths[i] = unknowns.Length(legs[i == cut ? i + 1 : i].Key);
        }

        Coils = [.. path.Valves.Select((v, i) => Coil(v, i, book))];
        Batches = [.. path.Valves.Select(v => unknowns.Batch(v.Place))];
        Own = [.. path.Valves.Select(v => unknowns.Coil(v.Coil))];
        work = new FeederVariation(this);
        reading = new FeederReading(this, unknowns, new RadialFeeder<double>([.. legs.Select(l => l.Parent)]), new RadialFeeder<System.Numerics.Complex>([.. legs.Select(l => l.Parent)]));
    }

    public StationPath Path { get; }

    public PracticeBook Book { get; }

    public Supply Supply { get; }

    /// <summary>Legs at whose far ends a conductor ends.</summary>
    public IReadOnlyList<int> Ends { get; }

    /// <summary>Of a stretch cut in two the half toward the controller, the other half comes next; -1 where none is.</summary>
    public int Cut { get; }

    /// <summary>Ohms of the station's conductor in each leg, splices not counted.</summary>
    public double[] ConductorCopper { get; }

    public double[] CommonCopper { get; }

    /// <summary>Standard deviation of the logarithm of each leg's ohms, by its length and gauge.</summary>
    public double[] LengthSpread { get; }

    /// <summary>The number of each leg's length among the unknowns.</summary>
    public int[] Lengths { get; }

    public FeederLoad[] Coils { get; }

    /// <summary>The number of each coil's batch among the unknowns.</summary>
    public int[] Batches { get; }

    /// <summary>The number of each coil among the unknowns, for what it has of its own.</summary>
    public int[] Own { get; }

    /// <summary>What an instrument would show with the suspects wrong.</summary>
    /// <param name="place">Where one stands; nothing at the controller.</param>
    public Prediction Predict(Measure measures, string? place, bool inrush, Suspect[] active)
    {
        work.Reset(measures, place, inrush, active.Length);
        for (var i = 0; i < active.Length; i++)
        {
            work.Begin(i);
            Effects.Apply(active[i], work);
        }

        if (work.IsTouched)
        {
            return reading.Of(work);
        }

        // Most suspects leave most readings as they are.
        if (!sound.TryGetValue((measures, place, inrush), out var prediction))
        {
            prediction = reading.Of(work);
            sound[(measures, place, inrush)] = prediction;
        }

        return prediction;
    }

    /// <summary>The leg of a suspect; -1 where it lies elsewhere.</summary>
    public int LegOf(Suspect suspect) => suspect.Leg is not { } key ? -1
        : suspect.Station is null && suspect.Fault.Scope != FaultScope.Run ? Path.LegOfCommon(suspect)
        : suspect.Station is null || suspect.Station == Path.Station ? Path.IndexOf(key) : -1;

    /// <summary>Loop ohms from the controller to a place on the way, splices not counted.</summary>
    public double OhmsTo(string place)
    {
        var ohms = 0.0;
        for (var i = Path.LegTo(place); i >= 0; i = Path.Legs[i].Parent)
        {
            ohms += ConductorCopper[i] + CommonCopper[i];
        }

        return ohms;
    }

    /// <summary>The valve at a place, else the first.</summary>
    public int ValveAt(string? place)
    {
        for (var v = 0; v < Path.Valves.Count; v++)
        {
            if (place is not null && (Path.Valves[v].Place == place || Path.Valves[v].Valve == place))
            {
                return v;
            }
        }

        return 0;
    }

    private static FeederLoad Coil(ValveEnd end, int index, PracticeBook book)
    {
        var model = CoilModel.Of(end.NotedOhms, book);
        return new FeederLoad { Node = end.Leg, Coil = index, CoilOhms = model.Ohms, IsLevel = model.OnLevel, CoilSpread = model.LogSpread, IsCoil = true };
    }
}
