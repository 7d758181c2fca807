namespace Underturf.Property.Practice;

/// <summary>What must hold between the numbers of naming.</summary>
internal static class NamingCheck
{
    public static IEnumerable<(bool Holds, string Place, string Reason)> Of(NamingPractice naming)
    {
        foreach (var (place, value) in new (string, double)[]
        {
            ("passes", naming.Passes), ("mayPass", naming.MayPass), ("strays", naming.Strays), ("commonPasses", naming.CommonPasses), ("loosePasses", naming.LoosePasses), ("cutOff", naming.CutOff), ("leadsOn", naming.LeadsOn),
            ("colourKept", naming.ColourKept), ("gaugeKept", naming.GaugeKept), ("commonColoured", naming.CommonColoured), ("stationColoured", naming.StationColoured), ("commonGauged", naming.CommonGauged), ("stationGauged", naming.StationGauged),
            ("notedWrong", naming.NotedWrong), ("toldWrong", naming.ToldWrong), ("commonAt", naming.CommonAt), ("nameAt", naming.NameAt),
        })
        {
            yield return (value is > 0 and < 1, $"naming.{place}", "must be a chance between 0 and 1");
        }

        foreach (var (place, value) in new (string, double)[]
        {
            ("nothing", naming.Nothing), ("resistorTolerance", naming.ResistorTolerance), ("soundOhms", naming.SoundOhms), ("wrongNameMinutes", naming.WrongNameMinutes),
            ("unnamedMinutes", naming.UnnamedMinutes),
        })
        {
            yield return (value > 0, $"naming.{place}", "must be more than zero");
        }

        yield return (naming.People >= 1, "naming.people", "must be at least one");
        yield return (naming.Resistors.All(r => r > 0), "naming.resistors", "must be ohms above zero");
        yield return (naming.Ways.Select(w => w.Name).Distinct().Count() == naming.Ways.Count, "naming.ways", "has a name twice");
        foreach (var way in naming.Ways)
        {
            var place = $"way of naming {way.Name}";
            double[] chances = way.Shows switch
            {
                NamingSign.Answers => [way.Missed, way.Imagined, way.DeafMissed, way.ChattyImagined, way.Deaf, way.Chatty, way.CommonAnswers],
                NamingSign.Apart => [],
                _ => [way.Missed, way.Imagined],
            };
            yield return (chances.All(c => c is > 0 and < 1) && way.Deaf + way.Chatty < 1, place, "needs its chances between 0 and 1, deaf and chatty together below 1");
            yield return (way is { PutMinutes: >= 0, WireMinutes: >= 0, TouchMinutes: >= 0, ReadyMinutes: >= 0, Most: >= 1 }, place, "needs minutes of zero or more, and one wire at the least");
        }
    }
}
