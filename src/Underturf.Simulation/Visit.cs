using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Quantities;
using Underturf.Simulation.Engines;

namespace Underturf.Simulation;

/// <summary>A technician's first day in a made-up property: readings, runs and looks, with a slip of the pen now and then.</summary>
internal sealed class Visit
{
    private readonly WorldShape shape;
    private readonly TrueWiring truth;
    private readonly VirtualTechnician technician;
    private readonly SeededGenerator slips;
    private readonly SeededGenerator engines;
    private readonly ICircuitEngine? second;
    private readonly Func<Fact, EntryId> note;
    private readonly List<EntryId> wrong = [];
    private readonly List<EntryId> bySecond = [];

    /// <param name="chance">Of the world.</param>
    /// <param name="second">Solves a share of the readings; nothing where the share is none.</param>
    public Visit(WorldShape shape, TrueWiring truth, SeededGenerator chance, ICircuitEngine? second, Func<Fact, EntryId> note)
    {
        this.shape = shape;
        this.truth = truth;
        this.second = second;
        this.note = note;
        technician = new VirtualTechnician(truth, null, shape.TailShare);
        (slips, engines) = (chance.Fork("slips"), chance.Fork("second engine"));
    }

    /// <summary>Readings noted under another station than the one read.</summary>
    public IReadOnlyList<EntryId> WrongNotes => wrong;

    /// <summary>Readings that the second engine solved.</summary>
    public IReadOnlyList<EntryId> BySecondEngine => bySecond;

    /// <summary>What the second engine could not do; nothing is read after that.</summary>
    public Problem? Problem { get; private set; }

    public void Go(IEnumerable<string> boxes)
    {
        Read("idle volts", null, null);
        foreach (var path in truth.Paths)
        {
            Read("station ohms", path.Station);
            Read("earth ohms", path.Station);
            note(technician.Run(path.Station, WorldGenerator.Place));
        }

        foreach (var path in truth.Paths.Take(3))
        {
            Read("terminal volts", path.Station);
            Read("running amps", path.Station);
        }

        Look(boxes);
    }

    /// <summary>Now and then another station is read, and noted under this one.</summary>
    private void Read(string how, string station)
    {
        var slipped = shape.WrongShare > 0 && slips.NextDouble() < shape.WrongShare;
        Read(how, slipped ? truth.Paths[slips.NextInt(truth.Paths.Count)].Station : station, station);
    }

    private void Read(string how, string? read, string? noted)
    {
        var asked = new ReadingFact { How = how, Stations = read is null ? [] : [read], Value = Shown.OverRange };
        var name = read is null ? how : $"{how} {read}";
        var other = second is not null && technician.IsSolved(asked) && engines.Fork(name).NextDouble() < shape.SecondEngineShare;
        if (Problem is not null)
        {
            return;
        }

        var shown = technician.Read(asked, name, other ? second! : OwnEngine.Instance);
        if (!shown.Succeeded)
        {
            Problem = shown.Problem;
            return;
        }

        var entry = note(shown.Value with { Stations = noted is null ? [] : [noted] });
        Remember(entry, wrong, read != noted);
        Remember(entry, bySecond, other);
    }

    private static void Remember(EntryId entry, List<EntryId> list, bool belongs)
    {
        if (belongs)
        {
            list.Add(entry);
        }
    }

    private void Look(IEnumerable<string> boxes)
    {
        foreach (var box in boxes.Where(_ => shape.LookShare > 0 && slips.NextDouble() < shape.LookShare))
        {
            var seen = truth.Faults.Where(f => f.Place == box && slips.NextDouble() < truth.Practice(f).Seen).ToList();
            note(new LookFact
            {
                Place = box,
                Stations = [.. seen.SelectMany(f => new[] { f.Station, f.Other }).OfType<string>().Distinct()],
                Found = [.. seen.Select(f => truth.Practice(f).FindingName).Distinct()],
            });
        }
    }
}
