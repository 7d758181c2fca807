using System.Diagnostics;
using System.Globalization;
using Underturf.Benchmarks;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

if (args is ["app"])
{
    return await AppStudy.RunAsync();
}

// ./prove browser [STATIONS...]: seconds from a picked log to the shown answer, in a page that has answered a small log before.

const ulong FirstSeed = 30_001;
int[] sizes = args.Length > 0 ? [.. args.Select(a => int.Parse(a, NumberStyles.None, CultureInfo.InvariantCulture))] : [20, 50, 100, 200];
await using var page = await MeasuredPage.OpenAsync(World(FirstSeed - 1, 10));
Console.WriteLine("| stations | properties | browser, median s | worst s | natively, median s | worst s | page deaf at most, ms |");
Console.WriteLine("|---|---|---|---|---|---|---|");
foreach (var stations in sizes)
{
    var (browser, native) = (new List<double>(), new List<double>());
    for (ulong i = 0; i < (stations <= 50 ? 15UL : 9UL); i++)
    {
        var log = World(FirstSeed + i, stations);
        browser.Add(await page.SecondsAsync(log));
        native.Add(NativeSeconds(log));
    }

    var deaf = await page.DeafMillisecondsAsync();
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {stations} | {browser.Count} | {Median(browser):F2} | {browser.Max():F2} | {Median(native):F2} | {native.Max():F2} | {deaf:F0} |"));
}

var (again, cold) = (await page.StartAgainSecondsAsync(World(FirstSeed, 200)), await page.ColdSecondsAsync());
Console.WriteLine();
Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Fresh page to the answer of 10 stations: {cold:F1} s. Stopped thought to the first progress of the next: {again:F1} s."));
return 0;

static byte[] World(ulong seed, int stations) => WorldGenerator.Make(seed, PracticeBook.Default, WorldShape.Whole(stations, null)).Log.ToBytes().ToArray();

static double Median(IEnumerable<double> values) => values.Order().ElementAt(values.Count() / 2);

// Once to warm the code, as the page is warm.
static double NativeSeconds(byte[] log)
{
    Notebook.Answer(log, PracticeBook.Default);
    var begin = Stopwatch.GetTimestamp();
    Notebook.Answer(log, PracticeBook.Default);
    return Stopwatch.GetElapsedTime(begin).TotalSeconds;
}
