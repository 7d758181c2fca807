using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Browser;

/// <summary>A server in memory that offers a log and adds to it as the real one does. It can be away, and can take nothing.</summary>
internal sealed class MemoryServer(Outcome<ReadOnlyMemory<byte>> offered) : IHomeServer
{
    private Func<Task> perhapsNew = () => Task.CompletedTask;

    public MemoryServer(ReadOnlyMemory<byte> log)
        : this((Outcome<ReadOnlyMemory<byte>>)log)
    {
    }

    public bool IsAway { get; set; }

    /// <summary>What is told of it while it is away.</summary>
    public Problem Silence { get; set; } = new("log.jsonl", "the server did not answer", "Start it again");

    public bool TakesNotes { get; set; } = true;

    /// <summary>Why nothing handed over is taken at present.</summary>
    public Problem? Refuses { get; set; }

    public ReadOnlyMemory<byte> Log { get; set; } = offered.Succeeded ? offered.Value : default;

    /// <summary>Lines handed over, each time, newest last.</summary>
    public List<int> Handed { get; } = [];

    public Task<Outcome<OfferedLog>> PullAsync() => Task.FromResult<Outcome<OfferedLog>>(
        IsAway ? Silence : offered.Succeeded ? new OfferedLog(Log, TakesNotes) : offered.Problem!);

    public Task<Outcome<PushAnswer>> PushAsync(ReadOnlyMemory<byte> lines)
    {
        if (IsAway)
        {
            return Task.FromResult<Outcome<PushAnswer>>(Silence);
        }

        Handed.Add(LogDocument.Read(lines).Lines.Count);
        if (Refuses is not null)
        {
            return Task.FromResult<Outcome<PushAnswer>>(new PushAnswer(0, [Refuses]));
        }

        var log = LogDocument.Read(Log);
        var taken = LogIntake.Of(log, lines);
        Log = log.With(taken.Added).ToBytes();
        return Task.FromResult<Outcome<PushAnswer>>(new PushAnswer(taken.Added.Count, taken.Refused));
    }

    public void Listen(Func<Task> perhapsNew) => this.perhapsNew = perhapsNew;

    /// <summary>What the device does when it is on line again.</summary>
    public Task TellAsync() => perhapsNew();
}
