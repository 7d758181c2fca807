using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Planning;

/// <summary>A small invented property: station 1 runs a valve in each of two boxes; a spare is proven to the far box, another only looks spare, station 3 waters nothing.</summary>
internal sealed class SharedGround
{
    private static readonly DateTimeOffset Morning = new(2031, 5, 6, 8, 0, 0, TimeSpan.FromHours(-6));

    private readonly LogKeeper keeper = new("shared");
    private int minute;

    /// <param name="metres">Length of each of the two runs.</param>
    public SharedGround(double metres, bool spares = true, bool abandoned = true, int terminals = 6)
    {
        Note(new ControllerFact { Id = "c", Label = "A", Terminals = terminals, Position = new Position(0, 0) });
        Note(new BoxFact { Id = "b1", Label = "box 1", Position = new Position(metres, 0) });
        Note(new BoxFact { Id = "b2", Label = "box 2", Position = new Position(2 * metres, 0) });
        Note(new StationFact { Id = "s1", Controller = "c", Terminal = 1, Waters = ["front lawn", "side bed"], Minutes = 12 });
        Note(new StationFact { Id = "s2", Controller = "c", Terminal = 2, Waters = ["back lawn"], Minutes = 10 });
        Note(Cable("k1", "c", "b1", metres));
        Note(Cable("k2", "b1", "b2", metres));
        Note(new ValveFact { Id = "v1", Box = "b1", Station = "s1", Waters = "side bed" });
        Note(new ValveFact { Id = "v2", Box = "b2", Station = "s1", Waters = "front lawn" });
        Note(new ValveFact { Id = "v3", Box = "b2", Station = "s2", Waters = "back lawn" });
        if (spares)
        {
            Spares(metres);
        }

        if (abandoned)
        {
            Note(new StationFact { Id = "s3", Controller = "c", Terminal = 3 });
            Note(new ReadingFact { How = "station ohms", Stations = ["s3"], Value = Shown.OverRange });
        }
    }

    public LogDocument Log => keeper.Log();

    public Notebook Notebook(PracticeBook? book = null) => global::Underturf.Reasoning.Notebook.Open(Log, book ?? PracticeBook.Default);

    public void Note(Fact fact) => keeper.Note("maren", Morning.AddMinutes(minute++), fact);

    private static CableFact Cable(string id, string from, string to, double metres) => new()
    {
        Id = id,
        From = from,
        To = to,
        Carries = ["s1", "s2"],
        Length = new Length(metres),
        Gauge = WireSize.FromAwg(18),
        CommonGauge = WireSize.FromAwg(14),
    };

    private void Spares(double metres)
    {
        Note(new EndFact { Id = "x1", Place = "c", Label = "loose 1" });
        Note(new EndFact { Id = "x2", Place = "c", Label = "loose 2" });
        Note(new EndFact { Id = "e0", Place = "b2", Colour = "white", Gauge = WireSize.FromAwg(14), Common = true });
        Note(new EndFact { Id = "e1", Place = "b2", Label = "end 1" });
        Note(new EndFact { Id = "e2", Place = "b2", Label = "end 2", Colour = "red" });
        TouchFact Touch(string how) => new() { How = how, Place = "b2", Put = ["x1"], Touched = ["e1", "e2"], Answered = ["e1"], Against = "e0" };
        Note(Touch("test coil"));
        Note(Touch("test coil"));
        Note(Touch("continuity") with { Touched = ["e1"], Value = Shown.Parse(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{4 * metres * 0.0205:0.0} ohm")).Value });
        Note(Touch("insulation") with { Touched = ["e1"], Answered = [], Value = Shown.OverRange });
    }
}
