using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>A log that is read some lines at a time, for whoever has to listen to something else in between.</summary>
/// <param name="kinds">The kinds to know; the standard ones where nothing is given.</param>
public sealed class LogReading(ReadOnlyMemory<byte> bytes, KindCatalogue? kinds = null)
{
    private readonly KindCatalogue known = kinds ?? KindCatalogue.Standard;
    private readonly List<Problem> problems = [];
    private LinePass? pass;
    private LogDocument? document;

    /// <summary>The log, as it would have been read in one go; nothing until its last line is.</summary>
    public LogDocument? Document => document;

    /// <summary>Reads on.</summary>
    /// <param name="lines">How many at most.</param>
    public void Go(int lines)
    {
        pass ??= new LinePass(new LineReader(known), bytes, problems);
        for (var i = 0; i < lines && document is null; i++)
        {
            if (!pass.Next())
            {
                document = LogDocument.OfRead(bytes, known, pass.End(), problems);
            }
        }
    }
}
