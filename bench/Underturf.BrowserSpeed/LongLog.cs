using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Simulation;

namespace Underturf.Benchmarks;

/// <summary>The demo log with many more notes: ohms of its stations, one in ten struck, or things on the ground.</summary>
internal static class LongLog
{
    private const ulong Seed = 41;
    private const string Writer = "long-log";

    public static byte[] Of(int entries)
    {
        var demo = MemorialGarden.Make(PracticeBook.Default).Log;
        var stations = demo.Standing.Select(entry => entry.Fact).OfType<StationFact>().Select(station => station.Id).ToList();
        var chance = new SeededGenerator(Seed);
        return Written(demo, Math.Max(0, entries - demo.Entries.Count), i => i % 10 == 9
            ? new StrikeFact { Entry = $"{Writer}/{i}" }
            : new ReadingFact { How = "station ohms", Stations = [stations[i % stations.Count]], Value = Shown.Parse($"{20 + (int)(20 * chance.NextDouble())} ohm").Value });
    }

    public static byte[] WithThings(int things)
    {
        var chance = new SeededGenerator(Seed);
        return Written(MemorialGarden.Make(PracticeBook.Default).Log, things, i => i % 2 == 0
            ? new BoxFact { Id = $"far-box-{i}", Position = Somewhere(chance) }
            : new GroundFact { Id = $"far-tree-{i}", What = "tree", Shape = [Somewhere(chance)] });
    }

    private static Position Somewhere(SeededGenerator chance) => new(200 * chance.NextDouble(), 200 * chance.NextDouble());

    private static byte[] Written(LogDocument log, int count, Func<int, Fact> write)
    {
        var (entries, last, noted) = (new List<Entry>(), (Header?)null, log.LastNoted!.Value);
        for (var i = 0; i < count; i++)
        {
            noted = HybridTime.Next(noted, noted.UnixMilliseconds + 1000);
            entries.Add(Pen.Seal(log.Property!, Writer, last, noted, write(i)).Value);
            last = entries[^1].Header;
        }

        return log.With(entries).ToBytes().ToArray();
    }
}
