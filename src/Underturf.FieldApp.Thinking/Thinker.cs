using System.Runtime.InteropServices.JavaScript;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Underturf.FieldLog;
using Underturf.Papers;
using Underturf.Planning.Day;
using Underturf.Planning.Repair;
using Underturf.Planning.Rework;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Water;

namespace Underturf.FieldApp.Thinking;

/// <summary>The worker's side: called from wwwroot/worker.js in a runtime of its own, where nothing is drawn.</summary>
internal static partial class Thinker
{
    private static readonly TravelJson forms = TravelJson.Default;

    /// <summary>What was thought about last, so that the papers of it need no second thought.</summary>
    private static (byte[] Log, Notebook Notebook, Answers Answers)? last;

    /// <summary>The bytes of an <see cref="OpenedLog"/> for those of a log.</summary>
    [JSExport]
    internal static byte[] Answer(byte[] log)
    {
        var (notebook, answers) = Think(log);
        var opened = new OpenedLog(answers, notebook.Problems)
        {
            Asked = [.. answers.Moves.Select(Asked)],
            Hidden = notebook.Hidden(answers),
            Readings = [.. notebook.Readings().Select(line => new PredictedReading(line.Entry.ToString(), line.Predicted))],
        };
        return Travel.Write(opened, forms.OpenedLog);
    }

    /// <summary>The bytes of all <see cref="MadePaper"/>s for those of a log.</summary>
    [JSExport]
    internal static byte[] Papers(byte[] log)
    {
        var (notebook, answers) = Thought(log) ?? Think(log);
        var teller = new Teller();
        var made = new List<MadePaper>();
        var count = PaperSet.Count(notebook, answers);
        foreach (var paper in PaperSet.Each(notebook, answers))
        {
            made.Add(Made(paper, notebook));
            teller.Report(made.Count / (double)count);
        }

        return Travel.Write(made.ToArray(), forms.MadePaperArray);
    }

    /// <summary>The bytes of a planned <see cref="ReworkAnswer"/> for those of a log.</summary>
    [JSExport]
    internal static byte[] Rework(byte[] log) => Travel.Write(Planned.Of(ReworkPlan.Of((Thought(log) ?? Think(log)).Notebook)), forms.PlannedReworkAnswer);

    /// <summary>The bytes of <see cref="FlowLines"/> for those of a log.</summary>
    [JSExport]
    internal static byte[] Flow(byte[] log)
    {
        var (notebook, _) = Thought(log) ?? Think(log);
        var flow = notebook.Flow();
        return Travel.Write(flow.Succeeded ? FlowTelling.Of(flow.Value, notebook.History.Facts.UsesUsUnits) : flow.Problem!, forms.FlowLines);
    }

    /// <summary>The bytes of a <see cref="PlannedDay"/> for those of a log.</summary>
    /// <param name="ask">A <see cref="DayAsk"/>.</param>
    [JSExport]
    internal static byte[] Day(byte[] log, string ask)
    {
        var (notebook, answers) = Thought(log) ?? Think(log);
        var planned = DayPlan.Of(notebook, JsonSerializer.Deserialize(ask, forms.DayAsk)!, answers);
        return Travel.Write(planned.Succeeded ? new PlannedDay(planned.Value, Made(DaySheet.Make(notebook, planned.Value, answers), notebook)) : planned.Problem!, forms.PlannedDay);
    }

    /// <summary>The bytes of a planned <see cref="RepairAnswer"/> for those of a log.</summary>
    /// <param name="thing">A valve, box or station.</param>
    [JSExport]
    internal static byte[] Repair(byte[] log, string thing)
    {
        var (notebook, answers) = Thought(log) ?? Think(log);
        return Travel.Write(Planned.Of(RepairPlan.Of(notebook, thing, answers)), forms.PlannedRepairAnswer);
    }

    /// <summary>The bytes of a <see cref="NamingAnswer"/> for those of a log.</summary>
    /// <param name="ask">A <see cref="NamingAsk"/>.</param>
    [JSExport]
    internal static byte[] Name(byte[] log, string ask)
    {
        var asked = JsonSerializer.Deserialize(ask, forms.NamingAsk)!;
        return Travel.Write(Notebook.Open(log, PracticeBook.Default).Name(asked.Place, asked.ToCrew()), forms.NamingAnswer);
    }

    /// <summary>The bytes of a <see cref="LocatedThing"/> for those of a log.</summary>
    /// <param name="ask">A <see cref="LocateAsk"/>.</param>
    [JSExport]
    internal static byte[] Locate(byte[] log, string ask)
    {
        var asked = JsonSerializer.Deserialize(ask, forms.LocateAsk)!;
        var thought = Thought(log);
        var located = Locate(thought?.Notebook ?? Notebook.Open(log, PracticeBook.Default, last?.Notebook), thought?.Answers, asked);
        if (!located.Succeeded && thought is null)
        {
            // What no note names is a fault that the diagnosis puts into the ground.
            var (notebook, answers) = Think(log);
            located = Locate(notebook, answers, asked);
        }

        return Travel.Write(located.Succeeded ? new LocatedThing(located.Value, Heat(located.Value)) : located.Problem!, forms.LocatedThing);
    }

    private static MadePaper Made(Paper paper, Notebook notebook) =>
        new(paper.FileName, paper.Title, paper.Bytes.ToArray(), Convert.ToHexStringLower(SHA256.HashData(paper.Bytes.Span)), Notebook.Engine, notebook.Book.Version);

    private static Outcome<LocationAnswer> Locate(Notebook notebook, Answers? answers, LocateAsk ask) =>
        ask.From is { } from ? notebook.Locate(ask.Thing, from, answers) : notebook.Locate(ask.Thing, null, answers);

    private static HeatLayer? Heat(LocationAnswer location) => location.Heat is { } heat
        ? new HeatLayer(HeatPicture.Make(heat), new Position(heat.Corner.EastMetres, heat.Corner.NorthMetres + (heat.Deep * heat.SideMetres)), heat.SideMetres)
        : null;

    /// <summary>What was thought about these bytes before, if they are those that were thought about last.</summary>
    private static (Notebook Notebook, Answers Answers)? Thought(byte[] log) => last is { } before && before.Log.AsSpan().SequenceEqual(log) ? (before.Notebook, before.Answers) : null;

    private static (Notebook Notebook, Answers Answers) Think(byte[] log)
    {
        var notebook = Notebook.Open(log, PracticeBook.Default, last?.Notebook);
        var answers = notebook.Answer(new Waiting(new Teller()));
        last = (log, notebook, answers);
        return (notebook, answers);
    }

    private static IReadOnlyList<string> Asked(Move move) => [.. move.Steps.Select(step => Encoding.UTF8.GetString(BodyText.Write(step.Asks)))];

    [JSImport("told", "worker")]
    private static partial void Told(double share);

    private sealed class Teller : IProgress<double>
    {
        public void Report(double value) => Told(value);
    }
}
