using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>How the server that the page came from stands to the log in hand.</summary>
public enum HomeState
{
    /// <summary>It has not been asked, offers no log, or one of another property.</summary>
    Apart,

    /// <summary>It did not answer.</summary>
    Away,

    /// <summary>It answered, but not to this device.</summary>
    Unpaired,

    /// <summary>It gives its log and takes nothing.</summary>
    GivesOnly,

    /// <summary>It holds every note.</summary>
    HasAll,

    /// <summary>It did not take every line that it was handed.</summary>
    Refuses,
}

/// <summary>
/// Pulls what the server has and pushes what it lacks, whenever it can be reached; nothing waits for it. Lines go as they were sealed, told apart by content, so
/// that it does not matter who was first, how often it is done, or where it was broken off.
/// </summary>
public sealed class PushAndPull(DeviceLog log, IHomeServer server)
{
    private string? property;
    private ReadOnlyMemory<byte> seen;
    private HeldEntries held = new([]);
    private bool busy;
    private bool asked;
    private bool pulling;

    public HomeState State { get; private set; } = HomeState.Apart;

    /// <summary>What the server did not take when it was last handed something.</summary>
    public IReadOnlyList<Problem> Refused { get; private set; } = [];

    /// <summary>Makes the two logs one. One run at a time: asked meanwhile, it runs once more.</summary>
    /// <param name="pulls">Whether to ask what is new there; a note of one's own is handed over without asking.</param>
    /// <returns>Whether the log in hand may have something new.</returns>
    public async Task<bool> RunAsync(bool pulls = true)
    {
        (asked, pulling) = (true, pulling || pulls);
        if (busy)
        {
            return false;
        }

        var before = log.Document;
        busy = true;
        try
        {
            await log.ReadWholeAsync();
            while (asked)
            {
                var pull = pulling || State is HomeState.Away or HomeState.Unpaired;
                (asked, pulling) = (false, false);
                await (pull ? RunOnceAsync() : PushAsync());
            }
        }
        finally
        {
            busy = false;
        }

        return !ReferenceEquals(before, log.Document);
    }

    private async Task RunOnceAsync()
    {
        var offered = await server.PullAsync();
        if (offered.Succeeded)
        {
            await TakeAsync(offered.Value);
        }
        else
        {
            State = Unheard(offered.Problem!);
        }
    }

    /// <summary>A server that never had a part in this log is not missed.</summary>
    private HomeState Unheard(Problem why) =>
        State == HomeState.Apart && !log.IsFromServer ? HomeState.Apart
        : why == IHomeServer.Unpaired ? HomeState.Unpaired
        : HomeState.Away;

    /// <summary>Goes on from a log that was pulled.</summary>
    private async Task TakeAsync(OfferedLog offered)
    {
        State = !log.TakesNotes || !await PullAsync(offered.Bytes) ? HomeState.Apart
            : offered.TakesNotes ? HomeState.HasAll
            : HomeState.GivesOnly;
        await PushAsync();
    }

    /// <summary>Takes in what is new. False where the server's log is of another property.</summary>
    private async Task<bool> PullAsync(ReadOnlyMemory<byte> bytes)
    {
        // The server only adds, so what stands behind what was seen is all that is new, unless somebody put another file in its place.
        var grown = property == log.Document.Property && bytes.Span.StartsWith(seen.Span);
        var (fresh, known) = grown ? new LogNews(bytes[seen.Length..], []) : LogNews.Of(bytes, log.Document);
        var news = LogDocument.Read(fresh);
        if (news.Entries.Any(entry => entry.Header.Property != log.Document.Property))
        {
            // Whose log it is, most of its lines say together.
            news = LogDocument.Read(bytes);
        }

        if (news.Property is not null && news.Property != log.Document.Property)
        {
            return false;
        }

        if (news.Entries.Count > 0)
        {
            await log.TakeInAsync(log.Source, news);
        }

        (property, seen, held) = (log.Document.Property, bytes, grown ? held : new HeldEntries([]));
        held.Add(known);
        held.Add(news.Entries);
        return true;
    }

    private async Task PushAsync()
    {
        if (State is not (HomeState.HasAll or HomeState.Refuses) || property != log.Document.Property)
        {
            return;
        }

        var lacking = log.Document.Entries.Where(entry => entry.Header.Property == property && !held.Has(entry)).ToList();
        if (lacking.Count > 0)
        {
            var lines = StoredLines.Joined(lacking.Select(entry => entry.Line));
            Hear(await server.PushAsync(lines), lacking, lines);
            await log.BackedUpAsync(State == HomeState.HasAll ? lacking : []);
        }
    }

    private void Hear(Outcome<PushAnswer> answer, List<Entry> handed, ReadOnlyMemory<byte> lines)
    {
        Refused = answer.Succeeded ? answer.Value.Refused : [];
        State = !answer.Succeeded ? Unheard(answer.Problem!) : Refused.Count > 0 ? HomeState.Refuses : HomeState.HasAll;
        if (State == HomeState.HasAll)
        {
            seen = (byte[])[.. seen.Span, .. lines.Span];
            held.Add(handed);
        }
    }
}
