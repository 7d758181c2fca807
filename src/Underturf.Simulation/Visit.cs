using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Quantities;
using Underturf.Simulation.Engines;

namespace Underturf.Simulation;

/// <summary>A technician's first day in a made-up property: readings, runs and looks, with a slip of the pen now and then.</summary>
internal sealed class Visit
{
    /// <summary>Stations of a small property, and one in so many of a whole one, that are read while they run.</summary>
    private const int FewRead = 3, OneIn = 7;

    /// <summary>More odd stations than so many, and one in so many, have something in common.</summary>
    private const int FewOdd = 3, OneOddIn = 15;

    private const string LeadsSwapped = "reversed ohms";

    /// <summary>Times the usual coil above which a reading is odd to any technician; no model's number.</summary>
    private const double FarFromOne = 3;

    private readonly WorldShape shape;
    private readonly TrueWiring truth;
    private readonly VirtualTechnician technician;
    private readonly SeededGenerator slips;
    private readonly SeededGenerator engines;
    private readonly ICircuitEngine? second;
    private readonly Func<Fact, EntryId> note;
    private readonly List<string> odd = [];
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
        Idle();
        foreach (var path in truth.Paths)
        {
            Read("station ohms", path.Station);
            if (!shape.FirstLookOnly)
            {
                Read("earth ohms", path.Station);
            }

            note(technician.Run(path.Station, WorldGenerator.Place));
        }

        if (shape.FirstLookOnly)
        {
            return;
        }

        foreach (var path in truth.Paths.Where((_, i) => shape.Stations is null ? i < FewRead : i % OneIn == 0))
        {
            Read("terminal volts", path.Station);
            Read("running amps", path.Station);
        }

        Turn();
        Look(boxes);
    }

    /// <summary>A supply is named by its controller where there are several.</summary>
    private void Idle()
    {
        var controllers = truth.Paths.Select(p => p.Controller).Distinct().ToList();
        foreach (var controller in controllers)
        {
            Read("idle volts", null, null, controllers.Count > 1 ? controller : null);
        }
    }

    /// <summary>
    /// Where a station of a whole property read far from a coil, the leads are swapped and it is read again; not where many do, which
    /// points at what they share. A figure that moved from one reading to the next is noted as drifting.
    /// </summary>
    private void Turn()
    {
        var alone = odd.Count > FewOdd + (truth.Paths.Count / OneOddIn) ? [] : odd.Distinct();
        foreach (var station in alone)
        {
            Read(LeadsSwapped, station);
        }
    }

    /// <summary>Now and then another station is read, and noted under this one.</summary>
    private void Read(string how, string station)
    {
        var slipped = shape.WrongShare > 0 && slips.NextDouble() < shape.WrongShare;
        Read(how, slipped ? truth.Paths[slips.NextInt(truth.Paths.Count)].Station : station, station);
    }

    private void Read(string how, string? read, string? noted, string? place = null)
    {
        var asked = new ReadingFact { How = how, Stations = read is null ? [] : [read], Place = place, Value = Shown.OverRange };
        var name = (read ?? place) is { } whose ? $"{how} {whose}" : how;
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

        var again = how == LeadsSwapped && technician.Drifts(asked);
        var entry = note(shown.Value with { Stations = noted is null ? [] : [noted], Drifting = shown.Value.Drifting || again });
        Remember(entry, wrong, read != noted);
        Remember(entry, bySecond, other);
        if (shape.Stations is not null && how == "station ohms" && !(shown.Value.Value.Value?.Si < FarFromOne * truth.Book.Coil.Ohms))
        {
            odd.Add(noted!);
        }
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
            foreach (var seen in technician.Look(box, slips.NextDouble))
            {
                note(seen);
            }
        }
    }
}
