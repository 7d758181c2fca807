using Underturf.FieldApp;
using Underturf.FieldLog;

namespace Underturf.Browser;

/// <summary>A map that keeps what it is told to show, and can be tapped.</summary>
internal sealed class RecordingMap : IGroundMap
{
    private Action<GroundTap> tapped = _ => { };

    public GroundPlan? Drawn { get; private set; }

    public IReadOnlyList<GroundSign> Signs { get; private set; } = [];

    public IReadOnlyList<GroundTie> Ties { get; private set; } = [];

    /// <summary>Where the device is shown.</summary>
    public (Position At, double AccuracyMetres)? Device { get; private set; }

    /// <summary>How the picture beneath lies that is shown.</summary>
    public PictureFit? Laid { get; private set; }

    /// <summary>The heat that lies over the plan.</summary>
    public HeatLayer? Likely { get; private set; }

    /// <summary>The stops of the search that is drawn.</summary>
    public IReadOnlyList<Position> Stops { get; private set; } = [];

    /// <summary>Id of the thing with a ring around it.</summary>
    public string? Ringed { get; private set; }

    public IReadOnlyList<Position> Sketched { get; private set; } = [];

    public string Said { get; private set; } = "";

    /// <summary>How often it was opened less how often it was closed.</summary>
    public int Opened { get; private set; }

    /// <summary>What draws it has come: at once, unless a test holds it back.</summary>
    public Task Ready { get; set; } = Task.CompletedTask;

    public Task ReadyAsync() => Ready;

    public void Open(string element, string of, bool feet, Action<GroundTap> tapped)
    {
        Opened++;
        this.tapped = tapped;
    }

    public void Tap(double eastMetres, double northMetres) => tapped(new GroundTap(new Position(eastMetres, northMetres), 0.1));

    public void Draw(GroundPlan plan) => Drawn = plan;

    public void Mark(IReadOnlyList<GroundSign> signs) => Signs = signs;

    public void Tie(IReadOnlyList<GroundTie> ties) => Ties = ties;

    public void Lay(string? address, PictureFit? fit, bool beneath) => Laid = address is null ? null : fit;

    public void Here(Position at, double accuracyMetres) => Device = (at, accuracyMetres);

    public void Heat(HeatLayer? heat) => Likely = heat;

    public void Route(IReadOnlyList<Position> stops, bool turns) => Stops = stops;

    public void Choose(int number) => Ringed = number < 0 ? null : Drawn!.Features[number].Id;

    public void Sketch(IReadOnlyList<Position> points, bool closed, string words) => (Sketched, Said) = ([.. points], words);

    public GroundTap Middle() => new(new Position(100, -60), 0.1);

    public void Zoom(int steps)
    {
    }

    public void ShowWhole()
    {
    }

    public void Close() => Opened--;
}
