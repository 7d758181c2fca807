using System.Globalization;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>What a note is about, as the form offers it.</summary>
public enum NoteKind
{
    Reading,
    Run,
    Look,
    LeftAs,
    Work,
    Words,

    /// <summary>Nothing but the photos: where they were taken.</summary>
    Photo,

    /// <summary>Ground that was searched in vain.</summary>
    Search,

    /// <summary>Something that says where a hidden thing lies.</summary>
    Sign,

    /// <summary>A signal that was followed.</summary>
    Trace,

    /// <summary>A valve that was turned by hand.</summary>
    Setting,

    /// <summary>A walk past what runs, or past what should not.</summary>
    Watch,

    /// <summary>Cans that caught what a station waters with.</summary>
    Catch,

    /// <summary>Meter and backflow device of a point of connection.</summary>
    Supply,

    /// <summary>Outlets of a station.</summary>
    Outlets,

    /// <summary>How high something that holds water lies.</summary>
    Height,
}

/// <summary>A note that is being typed. It stays as it is until it is stored.</summary>
public sealed class NoteDraft
{
    /// <summary>What the pad writes for a display that shows more than it can.</summary>
    public const string OverRange = "over range";

    public NoteKind? Kind { get; set; }

    public string How { get; set; } = "station ohms";

    public List<string> Stations { get; init; } = [];

    public string? Place { get; set; }

    /// <summary>What the display showed: digits, or <see cref="OverRange"/>.</summary>
    public string Value { get; set; } = "";

    public string Unit { get; set; } = "ohm";

    public bool Drifting { get; set; }

    public List<string> Watered { get; init; } = [];

    public string OtherPlace { get; set; } = "";

    public string? Behaved { get; set; }

    public List<string> Found { get; init; } = [];

    public string State { get; set; } = "";

    public string Told { get; set; } = "";

    public string Did { get; set; } = "";

    public string? Target { get; set; }

    public string Who { get; set; } = "";

    public string Words { get; set; } = "";

    /// <summary>What a search, a sign or a trace is about, and where it was.</summary>
    public SeekNote? Sought { get; init; }

    /// <summary>What the photos show, in the writer's words.</summary>
    public string Caption { get; set; } = "";

    /// <summary>Photos that were taken for it.</summary>
    public List<TakenPhoto> Photos { get; init; } = [];

    /// <summary>Outlets, a height, a meter or a backflow device.</summary>
    public PartNote Part { get; init; } = new();

    /// <summary>What each can caught: digits and unit.</summary>
    public List<string> Cans { get; init; } = [];

    /// <summary>How long it ran, in minutes.</summary>
    public string Minutes { get; set; } = "";

    /// <summary>When it was so, on the clock of the device: "2031-05-06T14:30"; empty for now.</summary>
    public string When { get; set; } = "";

    /// <summary>How it is known.</summary>
    public Grade Sure { get; set; } = Grade.Measured;

    /// <summary>When it was so; nothing for the time of noting.</summary>
    public DateTimeOffset? At => Moment() is { } local ? new DateTimeOffset(local, TimeZoneInfo.Local.GetUtcOffset(local)) : null;

    /// <summary>True where something was typed or chosen that would be missed.</summary>
    public bool IsTouched => Value.Length + State.Length + Told.Length + Did.Length + Words.Length + OtherPlace.Length + When.Length + Minutes.Length + Cans.Count + Watered.Count + Found.Count + Photos.Count + Caption.Length > 0 || Sought?.IsTouched == true || Part.IsTouched;

    /// <summary>True where the stations of a reading are chosen.</summary>
    public bool NamesStations => Stations.Count >= ReadingWay.Named(How).Least;

    /// <summary>In a sweep: nothing read yet of a station, or of none once all are read.</summary>
    public void TurnTo(string? station, string unit)
    {
        Stations.Clear();
        Stations.AddRange(station is null ? [] : [station]);
        (Value, Unit, Drifting) = ("", unit, false);
    }

    /// <summary>A form that asks for what a move left open.</summary>
    /// <param name="asked">A reading stands over range, a look has found nothing, a run names no place; work is complete.</param>
    public static NoteDraft Of(Fact asked) => asked switch
    {
        ReadingFact f => new NoteDraft { Kind = NoteKind.Reading, How = f.How, Stations = [.. f.Stations], Place = f.Place, Unit = ReadingWay.Named(f.How).Units[0] },
        TestFact f => new NoteDraft { Kind = NoteKind.Run, Stations = [f.Station], Watered = [.. f.Watered], Behaved = f.Behaved },
        LookFact f => new NoteDraft { Kind = NoteKind.Look, Place = f.Place, Stations = [.. f.Stations], Found = [.. f.Found] },
        WorkFact f => new NoteDraft { Kind = NoteKind.Work, Did = f.Did, Place = f.Place, Target = f.Target },
        LeftAsFact f => new NoteDraft { Kind = NoteKind.LeftAs, Place = f.Place, State = f.State, Told = f.Told ?? "" },
        SettingFact f => new NoteDraft { Kind = NoteKind.Setting, Target = f.Of, State = f.State },
        CatchFact f => new NoteDraft { Kind = NoteKind.Catch, Stations = [f.Station] },
        WatchFact f => new NoteDraft { Kind = NoteKind.Watch, Stations = [.. f.Station is { } ran ? [ran] : Array.Empty<string>()], Target = f.About, Found = [.. f.Seen] },
        _ => new NoteDraft(),
    };

    /// <summary>What it says with its photos, or what is still missing.</summary>
    public Outcome<Fact> ToFact()
    {
        var said = When.Length > 0 && Moment() is null ? Missing("time", "Write when it was so, or leave it empty for now") : Said();
        return !said.Succeeded ? said : said.Value with { Sure = Sure, Photos = [.. Photos.Select(photo => photo.Hash).Where(hash => hash != (said.Value as PhotoFact)?.Hash)] };
    }

    /// <summary>What it says, which may be several facts: of a search one for each way, of a turned valve what the meter showed then.</summary>
    public Outcome<IReadOnlyList<Fact>> ToFacts()
    {
        var first = ToFact();
        if (!first.Succeeded)
        {
            return first.Problem!;
        }

        var then = Kind == NoteKind.Setting && Value.Length > 0 ? ToReading() : first;
        if (!then.Succeeded)
        {
            return then.Problem!;
        }

        Fact[] all = [.. Sought?.First() ?? [], first.Value, .. Kind == NoteKind.Search ? Sought!.Searches().Skip(1) : [], .. ReferenceEquals(then.Value, first.Value) ? Array.Empty<Fact>() : [then.Value]];
        return all;
    }

    private DateTime? Moment() => DateTime.TryParse(When, CultureInfo.InvariantCulture, DateTimeStyles.None, out var local) ? local : null;

    private Outcome<Fact> Said() => Kind switch
    {
        NoteKind.Search => Sought?.Searches() is [var search, ..] ? search : Missing("minutes", "Write how many minutes were spent"),
        NoteKind.Sign => Sought is { Way.Length: > 0 } sign ? sign.ToSign() : Missing("sign", "Choose what it was"),
        NoteKind.Trace => Sought is { Way.Length: > 0, Ended.Length: > 0 } trace ? trace.ToTrace() : Missing("end", "Choose how the signal ended"),
        NoteKind.Photo => Photos is [var first, ..]
            ? first.ToFact(Place) with { Caption = Given(Caption) }
            : Missing("photo", "Take a photo"),
        NoteKind.Reading => ToReading(),
        NoteKind.Run => ToRun(),
        NoteKind.Look => Place is null
            ? Missing("place", "Choose where you looked")
            : new LookFact { Place = Place, Found = [.. Found], Stations = [.. Stations] },
        NoteKind.LeftAs => Place is null ? Missing("place", "Choose the place you leave")
            : State.Trim().Length == 0 ? Missing("state", "Choose or write how you leave it")
            : new LeftAsFact { Place = Place, State = State.Trim(), Told = Given(Told) },
        NoteKind.Work => Did.Trim().Length == 0
            ? Missing("work", "Choose or write what was done")
            : new WorkFact { Did = Did.Trim(), Place = Place, Target = Target },
        NoteKind.Words => Words.Trim().Length == 0 ? Missing("words", "Write what was said or seen")
            : Who.Trim().Length == 0 ? Missing("who", "Write who says it")
            : new ToldFact { Who = Who.Trim(), Text = Words.Trim(), About = Place },
        NoteKind.Setting => Target is null ? Missing("valve", "Choose the valve that was turned")
            : !WaterNotes.States.Contains(State) ? Missing("state", "Choose how it stands now")
            : new SettingFact { Of = Target, State = State },
        NoteKind.Watch => WaterNotes.Watch(this),
        NoteKind.Supply => Part.ToSupply(),
        NoteKind.Outlets => Part.ToOutlets(Stations),
        NoteKind.Height => Part.ToHeight(),
        NoteKind.Catch => Stations is [var caught]
            ? WaterNotes.Cans(this).Count == 0 && Value.Length == 0 ? Missing("cans", "Type what the first can caught, then \"Add this can\"") : WaterNotes.Catch(this, caught)
            : Missing("station", "Choose the station that ran"),
        _ => Missing("kind", "Choose what you want to note"),
    };

    private Outcome<Fact> ToReading()
    {
        var way = ReadingWay.Named(How);
        if (!NamesStations)
        {
            return Missing(way.Stations == 2 ? "two stations" : "station", way.Stations == 2 ? "Choose the two stations" : "Choose the station");
        }

        if (way.Elsewhere && Place is null)
        {
            return Missing("place", "Choose where the instrument was");
        }

        if (Value.Length == 0)
        {
            return Missing("reading", "Tap what the display showed");
        }

        var shown = PadText.Read(Value, Unit, way.Units);
        return shown.Succeeded
            ? new ReadingFact { How = How, Stations = [.. Stations], Place = Place, Value = shown.Value, Drifting = Drifting }
            : shown.Problem!;
    }

    private Outcome<Fact> ToRun() => Stations is [var station]
        ? new TestFact { Station = station, Watered = [.. Watered, .. Given(OtherPlace) is { } other ? [other] : Array.Empty<string>()], Behaved = Behaved }
        : Missing("station", "Choose the station that was run");

    private static Problem Missing(string what, string remedy) => new(what, "is not given yet", remedy);

    private static string? Given(string text) => text.Trim() is { Length: > 0 } given ? given : null;
}
