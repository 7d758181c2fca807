using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning;

/// <summary>
/// A small invented property: one controller, three boxes in a line, two stations at each, 18 AWG out and 14 AWG back. Notes are added
/// minute by minute.
/// </summary>
internal sealed class Site
{
    private const string Writer = "ann";
    private readonly LogKeeper keeper = new("small-site");
    private TimeSpan step = TimeSpan.FromMinutes(1);
    private DateTimeOffset moment = new(2031, 4, 2, 8, 0, 0, TimeSpan.Zero);

    /// <summary>Only a name and a controller.</summary>
    public static Site Bare()
    {
        var site = new Site();
        site.Add(new PropertyFact { Name = "A small invented site", Zone = "Etc/UTC" });
        site.Add(new ControllerFact { Id = "c", Terminals = 24, Position = new Position(0, 0) });
        return site;
    }

    /// <summary>Stations s1, s2 end in b1, s3, s4 in b2, s5, s6 in b3, each leg this many metres long.</summary>
    public static Site Line(double legMetres = 60)
    {
        var site = Bare();
        for (var b = 1; b <= 3; b++)
        {
            site.Add(new BoxFact { Id = $"b{b}", Label = $"box {b}", Position = new Position(b * legMetres, 0) });
        }

        for (var s = 1; s <= 6; s++)
        {
            site.Station(s);
        }

        site.Cable("k1", "c", "b1", legMetres, "s1", "s2", "s3", "s4", "s5", "s6");
        site.Cable("k2", "b1", "b2", legMetres, "s3", "s4", "s5", "s6");
        site.Cable("k3", "b2", "b3", legMetres, "s5", "s6");
        for (var s = 1; s <= 6; s++)
        {
            site.Add(new ValveFact { Id = $"v{s}", Box = $"b{(s + 1) / 2}", Station = $"s{s}" });
        }

        return site;
    }

    /// <summary>Two cables of three stations each, all alike to box 1; the valves of the second were found there. Those of the first read so many ohms more.</summary>
    public static Site TwoCables(double more)
    {
        var site = Bare();
        site.Add(new BoxFact { Id = "b1", Label = "box 1", Position = new Position(60, 0) });
        site.Cable("k1", "c", "b1", 60, "s1", "s2", "s3").Cable("k2", "c", "b1", 60, "s4", "s5", "s6");
        for (var s = 1; s <= 6; s++)
        {
            site.Station(s).Read("station ohms", Ohms(SoundOhms(60, 1) + (s <= 3 ? more : 0)), $"s{s}");
            if (s > 3)
            {
                site.Add(new ValveFact { Id = $"v{s}", Box = "b1", Station = $"s{s}" });
            }
        }

        return site;
    }

    /// <summary>Ohms of a sound run and its coil: copper from CHECKS.md (exact, solid, 20 C) at 15 C, a splice in either conductor of a leg.</summary>
    public static double SoundOhms(double metres, int legs, double coilOhms = 31) => WireOhms(metres, legs) + coilOhms;

    public static double WireOhms(double metres, int legs) =>
        (metres * (6.385 + 2.525) / 304.8 * (1 - (0.00393 * 5))) + (legs * 2 * 0.03);

    public Site Station(int number, string? controller = null)
    {
        Add(new StationFact { Id = $"s{number}", Controller = controller ?? "c", Terminal = number, Label = $"{number}", Waters = [$"lawn {number}"] });
        return this;
    }

    public Site Cable(string id, string from, string to, double metres, params string[] carries)
    {
        Add(new CableFact
        {
            Id = id,
            From = from,
            To = to,
            Length = new Length(metres),
            Carries = carries,
            Gauge = WireSize.FromAwg(18),
            CommonGauge = WireSize.FromAwg(14),
        });
        return this;
    }

    /// <summary>From here on all notes are of one moment, told apart by their order alone.</summary>
    public Site InOneBreath()
    {
        step = TimeSpan.Zero;
        return this;
    }

    public EntryId Add(Fact fact)
    {
        moment += step;
        return keeper.Note(Writer, moment, fact);
    }

    public Site With(Fact fact)
    {
        Add(fact);
        return this;
    }

    public Site Read(string how, string value, params string[] stations) => With(Reading(how, value, null, stations));

    public Site ReadAt(string place, string how, string value, params string[] stations) => With(Reading(how, value, place, stations));

    public static ReadingFact Reading(string how, string value, string? place, params string[] stations) =>
        new() { How = how, Value = Shown.Parse(value).Value, Place = place, Stations = stations };

    /// <summary>Station ohms of all six, sound but for those given.</summary>
    public Site Sweep(double legMetres = 60, params (int Station, string Value)[] odd)
    {
        for (var s = 1; s <= 6; s++)
        {
            var legs = (s + 1) / 2;
            var read = odd.FirstOrDefault(o => o.Station == s).Value ?? Ohms(SoundOhms(legs * legMetres, legs));
            Read("station ohms", read, $"s{s}");
        }

        return this;
    }

    public static string Ohms(double ohms) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{ohms:0.0} ohm");

    public Site Run(int station, string behaved = "opens", params string[] watered) =>
        With(new TestFact { Station = $"s{station}", Behaved = behaved, Watered = watered });

    public LogDocument Log() => keeper.Log();

    public Notebook Open(PracticeBook? book = null) => Notebook.Open(Log(), book ?? PracticeBook.Default);

    public Answers Answer(PracticeBook? book = null) => Open(book).Answer();
}

/// <summary>Short ways to ask answers.</summary>
internal static class Asking
{
    public static OpenQuestion About(this Answers answers, int station) =>
        Assert.Single(answers.Questions, q => q.Stations.Contains($"{station}"));

    /// <summary>Probability of all explanations that name one of the faults.</summary>
    public static double Share(this OpenQuestion question, params string[] faults) =>
        question.Explanations
            .SelectMany(e => e.Alike.Count > 0 ? e.Alike.Select(a => (a.Fault, a.Probability)) : [(e.Fault, e.Probability)])
            .Where(e => e.Fault.Split(" + ").Intersect(faults).Any())
            .Sum(e => e.Probability);

    public static Explanation Explanation(this OpenQuestion question, string fault) => question.Explanations.First(e => e.Fault == fault);

    public static string Leading(this OpenQuestion question) => question.Explanations[0].Fault;

    /// <summary>Probability that the thing sits at a place, whichever of the faults it is.</summary>
    public static double At(this OpenQuestion question, string place, params string[] faults) => question.Explanations
        .Where(e => faults.Contains(e.Fault))
        .Sum(e => e.Probability * e.Places.Where(p => p.Place == place).Sum(p => p.Probability));
}
