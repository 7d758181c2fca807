using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Tests.Reasoning;

namespace Underturf.Tests.Property;

/// <summary>Small invented logs that between them call on every number of the practice book.</summary>
internal static class PracticeLogs
{
    private const string Over = "over range";

    public static LogDocument[] All() => [Many(), Unknown(), Sagging(), Downstream(), Long(), Disagreeing(), Doubtful(2.5), Doubtful(3), Doubtful(3.5), Doubtful(4), Doubtful(4.5), .. PracticeRepairs.All(), Pumped(), Between(), Commons(), Apart(), Beyond(), Onward()];

    /// <summary>Every way of reading, and something odd at each station.</summary>
    private static LogDocument Many()
    {
        var site = Two(measured: false);
        site.Read("idle volts", "26.4 V").Read("station ohms", "18.4 ohm", "s1").Read("reversed ohms", "19.0 ohm", "s1");
        site.Add(Site.Reading("station ohms", "96.0 ohm", null, "s2") with { Drifting = true });
        site.ReadAt("b1", "outward ohms", "17 ohm", "s1");
        site.ReadAt("b1", "coil ohms", "30.1 ohm", "s1").ReadAt("b1", "joined ohms", "2.1 ohm", "s1");
        site.Read("earth ohms", "45 kohm", "s1").Read("earth ohms", Over, "s2").Read("terminal volts", "24.9 V", "s1");
        site.ReadAt("b1", "valve volts", "24.0 V", "s1").Read("running amps", "0.33 A", "s1");
        site.Run(1, "opens", "lawn 1", "the pond").Run(2, "chatters", "lawn 9");
        return site.With(new LookFact { Place = "b1", Found = ["plain branch"] }).With(new LookFact { Place = "b1", Stations = ["s2"] }).Log();
    }

    /// <summary>A reading that ties two stations: dearest to weigh, so it stands last.</summary>
    private static LogDocument Between() =>
        Two(measured: true).Read("station ohms", Over, "s1").Read("station to station ohms", "66 ohm", "s1", "s2").Log();

    /// <summary>Somebody saw a coil joined to a wrong common where there are two.</summary>
    private static LogDocument Commons()
    {
        var site = Two(measured: true).With(new StationFact { Id = "s3", Controller = "c", Terminal = 3, Label = "3", Common = "B" });
        site.Read("station ohms", Over, "s1").ReadAt("b1", "coil ohms", "30.1 ohm", "s1");
        return site.With(new LookFact { Place = "b1", Stations = ["s1"], Found = ["wrong common"] }).Log();
    }

    /// <summary>Two commons at the controller, and a reading between stations of two cables.</summary>
    private static LogDocument Apart()
    {
        var site = Two(measured: true).Station(3).Cable("k2", "c", "b1", 60, "s3");
        foreach (var end in new[] { "e1", "e2" })
        {
            site.Add(new EndFact { Id = end, Place = "c", Common = true });
        }

        return site.Read("station ohms", "33.0 ohm", "s1").Read("station ohms", "33.4 ohm", "s3").Read("station to station ohms", Over, "s1", "s3").Log();
    }

    /// <summary>Two cables that end in one box, in one of them valves that nobody found, and all stations read alike too much.</summary>
    private static LogDocument Beyond()
    {
        var site = Two(measured: true).Station(3).Station(4).Cable("k2", "c", "b1", 60, "s3", "s4");
        for (var s = 1; s <= 4; s++)
        {
            site.Read("station ohms", "47 ohm", $"s{s}");
        }

        return site.Log();
    }

    /// <summary>Of two cables one has valves that nobody found, and all its stations read as much too much as a longer cable would.</summary>
    private static LogDocument Onward() => Site.TwoCables(4).Read("station ohms", "60 ohm", "s1").Log();

    /// <summary>No cables, no positions, nothing found: assumptions only.</summary>
    private static LogDocument Unknown()
    {
        var site = Site.Bare().Station(1).Station(2);
        return site.Read("station ohms", Over, "s1").Read("station ohms", "44.0 ohm", "s2").Log();
    }

    /// <summary>Volts that sag, and the supply not read.</summary>
    private static LogDocument Sagging()
    {
        var site = Two(measured: true).Read("station ohms", "33.0 ohm", "s1").Read("terminal volts", "22.6 V", "s1").Read("terminal volts", "22.7 V", "s2");
        return site.Run(1, "chatters").Run(2, "stays shut").Read("meter flow", "2 gpm").Log();
    }

    /// <summary>A common that may be gone or bad, or the sensor in it.</summary>
    private static LogDocument Downstream()
    {
        var site = Two(measured: false, Grade.Told).Read("station ohms", "120 ohm", "s1").Read("station ohms", "118 ohm", "s2");
        return site.Log();
    }

    /// <summary>Runs so long that volts decide, with their lengths inferred or unknown, on a supply of another frequency than usual.</summary>
    private static LogDocument Long()
    {
        var site = Site.Bare();
        site.Add(new ControllerFact { Id = "c", Terminals = 24, Position = new Position(0, 0), Frequency = new Frequency(50) });
        site.Add(new BoxFact { Id = "b1", Position = new Position(700, 0) });
        site.Add(new BoxFact { Id = "b2", Position = new Position(900, 0) });
        site.Station(1).Station(2);
        site.Add(new CableFact { Id = "k1", From = "c", To = "b1", Carries = ["s1", "s2"], Gauge = WireSize.FromAwg(20) });
        site.Add(new CableFact { Id = "k2", From = "b1", To = "b2", Carries = ["s2"], Gauge = WireSize.FromAwg(20), Length = new Length(200), Sure = Grade.Estimated });
        return site.Read("station ohms", "70 ohm", "s1").Read("station ohms", "85 ohm", "s2").Run(1, "chatters").Run(2, "opens", "lawn 2").Log();
    }

    /// <summary>Two readings of one thing that differ by a little over four spreads.</summary>
    private static LogDocument Disagreeing() =>
        Two(measured: true).Read("station ohms", "32.6 ohm", "s1").Read("station ohms", "36.0 ohm", "s1").Read("station ohms", "33.0 ohm", "s2").Log();

    /// <summary>One reading a little to clearly high: somewhere among these a question is just opened, or just not.</summary>
    private static LogDocument Doubtful(double moreOhms) =>
        Site.Line().Sweep(60, (3, Site.Ohms(Site.SoundOhms(120, 2) + moreOhms))).Log();

    /// <summary>A relay starts a pump with every station.</summary>
    private static LogDocument Pumped() =>
        Two(measured: true).With(new ControllerFact { Id = "c", Terminals = 24, PumpRelay = new PumpRelay(true, null) }).Log();

    private static Site Two(bool measured, Grade otherwise = Grade.Estimated)
    {
        var site = Site.Bare();
        site.Add(new BoxFact { Id = "b1", Label = "box 1", Position = new Position(60, 0) });
        site.Station(1).Station(2);
        site.Add(new CableFact
        {
            Id = "k1",
            From = "c",
            To = "b1",
            Length = new Length(60),
            Carries = ["s1", "s2"],
            Sure = measured ? Grade.Measured : otherwise,
            Gauge = measured ? WireSize.FromAwg(18) : null,
        });
        site.Add(new ValveFact { Id = "v1", Box = "b1", Station = "s1" });
        return measured ? site : site.With(new CoilFact { Id = "coil1", Valve = "v1", Ohms = new Resistance(30) });
    }
}
