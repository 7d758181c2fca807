using Underturf.FieldLog;

namespace Underturf.Server;

/// <summary>The file of the log that is served. It is only ever added to, and is whole at any moment.</summary>
internal sealed class HeldLog(string path) : IDisposable
{
    private readonly SemaphoreSlim alone = new(1, 1);

    public string Name => Path.GetFileName(path);

    public void Dispose() => alone.Dispose();

    public Task<byte[]> ReadAsync(CancellationToken cancellation) => File.ReadAllBytesAsync(path, cancellation);

    /// <summary>Adds what the log lacks of some lines; what it has stays byte for byte.</summary>
    public async Task<LogIntake> AddAsync(ReadOnlyMemory<byte> lines, CancellationToken cancellation)
    {
        await alone.WaitAsync(cancellation);
        try
        {
            // A command can write the same file: then what it wrote is read, and the lines are added to that.
            for (; ; )
            {
                var before = await ReadAsync(cancellation);
                var log = LogDocument.Read(before);
                var taken = LogIntake.Of(log, lines);
                if (taken.Added.Count == 0 || WholeFile.Write(path, log.With(taken.Added).ToBytes().Span, () => IsStill(before)))
                {
                    return taken;
                }
            }
        }
        finally
        {
            alone.Release();
        }
    }

    private bool IsStill(byte[] before) => File.ReadAllBytes(path).AsSpan().SequenceEqual(before);
}
