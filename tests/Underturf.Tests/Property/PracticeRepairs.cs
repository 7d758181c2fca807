using Underturf.FieldLog;
using Underturf.Tests.Reasoning;

namespace Underturf.Tests.Property;

/// <summary>For each repair of the practice book an invented log after which it is what one would do.</summary>
internal static class PracticeRepairs
{
    private const string Over = "over range";

    public static LogDocument[] All() =>
    [
        Conductor(), Coil(), Branch(), Device(), Laterals(), Common(), Valve(), Crossed(), Swapped(), Sensor(), Supply(), Misread(), Leak(), Proven(), Twin(), Meetings(), Dry(),
    ];

    private static LogDocument Conductor() => Site.Line().Sweep(60, (5, Over)).ReadAt("b3", "coil ohms", "31.0 ohm", "s5")
        .With(new LookFact { Place = "b1", Stations = ["s5"] }).With(new LookFact { Place = "b2", Stations = ["s5"] }).With(new LookFact { Place = "b3", Stations = ["s5"] }).Log();

    private static LogDocument Coil() => Site.Line().Sweep(60, (5, Over)).ReadAt("b3", "coil ohms", Over, "s5").Log();

    private static LogDocument Branch() => Site.Line().Sweep(60, (5, "19.5 ohm")).With(new LookFact { Place = "b2", Stations = ["s5"], Found = ["plain branch"] }).Log();

    private static LogDocument Device() => Site.Line().Sweep(60, (5, "2.6 kohm")).Read("running amps", "0.40 A", "s5").ReadAt("b2", "valve volts", "19.4 V", "s5")
        .With(new LookFact { Place = "b2", Stations = ["s5"], Found = ["sharing device"] }).Log();

    private static LogDocument Laterals() =>
        Site.Line().Sweep().Run(3, "opens", "lawn 3", "the pond").Run(1, "opens", "lawn 1").Run(4, "opens", "lawn 4").Run(5, "opens", "lawn 5").Log();

    private static LogDocument Common() => Site.Line().Sweep(60, (5, Over)).With(new LookFact { Place = "b2", Stations = ["s5"], Found = ["wrong common"] }).Log();

    private static LogDocument Valve() => Site.Line().Sweep().Run(3, "stays shut").Log();

    private static LogDocument Dry() => Site.Line().Sweep().Run(1, "stays shut").Run(3, "stays shut").Run(4, "stays shut").Run(6, "stays shut").Log();

    private static LogDocument Crossed() => Site.Line().Sweep(60, (3, "19.3 ohm"), (4, "19.2 ohm"))
        .Run(3, "opens", "lawn 3", "lawn 4").Run(4, "opens", "lawn 4", "lawn 3").With(new LookFact { Place = "b2", Found = ["crossed conductors"] }).Log();

    private static LogDocument Swapped() => Site.Line().Sweep().Run(3, "opens", "lawn 4").Run(4, "opens", "lawn 3").Log();

    private static LogDocument Sensor() => Site.Line().Sweep(60, [.. Enumerable.Range(1, 6).Select(s => (s, Over))])
        .With(new LookFact { Place = "c", Found = ["open-sensor"] }).With(new LookFact { Place = "b1" }).Log();

    private static LogDocument Supply() => Site.Line().Sweep().Read("idle volts", "26.5 V").Read("terminal volts", "21.0 V", "s1").Read("terminal volts", "21.0 V", "s5").Run(1, "chatters").Log();

    private static LogDocument Misread() => Site.Line().Sweep().Read("terminal volts", "41.7 V", "s3").Log();

    /// <summary>Leads joined at the valve prove the coil, but for a slip of the pen: the regret that is left lies near the book's threshold.</summary>
    private static LogDocument Proven() => Site.Line().Sweep(60, (3, Over)).ReadAt("b2", "joined ohms", "3.6 ohm", "s3").Log();

    /// <summary>A station of two noted valves, one coil of which is gone: which of them decides where one goes.</summary>
    private static LogDocument Twin() => Site.Line().With(new ValveFact { Id = "v3b", Box = "b1", Station = "s3" })
        .Sweep(60, (3, Site.Ohms(Site.SoundOhms(120, 2)))).Run(3, "opens", "lawn 3").Log();

    /// <summary>A station that reads two coils, its partner not known: it meets others in two boxes.</summary>
    private static LogDocument Meetings() => Site.Line().Read("station ohms", "19.3 ohm", "s3").Run(3, "opens", "lawn 3", "the pond").Log();

    private static LogDocument Leak() => Site.Line().Sweep().Read("earth ohms", "15 kohm", "s3").Log();
}
