using System.Runtime.InteropServices.JavaScript;
using System.Text;
using System.Text.Json;
using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.FieldApp.Browser;

/// <summary>The worker's side: called from wwwroot/worker.js in a runtime of its own, where nothing is drawn.</summary>
internal static partial class Thinker
{
    /// <summary>The bytes of an <see cref="OpenedLog"/> for those of a log.</summary>
    [JSExport]
    internal static byte[] Answer(byte[] log)
    {
        var notebook = Notebook.Open(log, PracticeBook.Default);
        var answers = notebook.Answer(new Waiting(new Teller()));
        var opened = new OpenedLog(answers, notebook.Problems)
        {
            Asked = [.. answers.Moves.Select(Asked)],
            Readings = [.. notebook.Readings().Select(line => new PredictedReading(line.Entry.ToString(), line.Predicted))],
        };
        return JsonSerializer.SerializeToUtf8Bytes(opened, OpenedLogJson.Default.OpenedLog);
    }

    private static IReadOnlyList<string> Asked(Move move) => [.. move.Steps.Select(step => Encoding.UTF8.GetString(BodyText.Write(step.Asks)))];

    [JSImport("told", "worker")]
    private static partial void Told(double share);

    private sealed class Teller : IProgress<double>
    {
        public void Report(double value) => Told(value);
    }
}
