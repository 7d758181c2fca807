using Underturf.FieldLog;
using Underturf.Planning.Rework;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Planning.Repair;

/// <summary>The steps of a junction box that are still to be done.</summary>
internal sealed class BoxSteps(BoxCase box, RepairOption option)
{
    /// <summary>As the log names the job of remaking single joints.</summary>
    private const string JointJob = "joint repair";

    private readonly JointPractice book = box.Site.Numbers.Joints;
    private readonly string where = box.Site.View.Name(box.Id);

    private IReadOnlyList<WiredJoint> Joints => option.Kind == RepairKind.Joint ? [.. box.Wired.Where(box.IsSuspected)] : box.Wired;

    public IReadOnlyList<RepairStep> Write()
    {
        if (box.Rebuild.IsFinished && box.Chance is null)
        {
            return [];
        }

        var done = option.Kind == RepairKind.Joint ? JointsDone() : box.Rebuild.IsFinished ? [] : box.Rebuild.Done.Keys.ToHashSet();
        return [.. BoxRebuild.Steps.Where(s => !done.Contains(s)).Select(Step)];
    }

    private HashSet<RebuildStep> JointsDone()
    {
        var identity = box.Site.View.Identity;
        var steps = box.Site.Notebook.History.Facts.Steps.Where(s => s.Fact.Job == JointJob && identity.Of(s.Fact.Place) == box.Id).OrderBy(s => s.Moment).Select(s => s.Fact.Step).ToList();
        var since = steps[(steps.LastIndexOf(BoxRebuild.Named(RebuildStep.House)) + 1)..];
        return [.. BoxRebuild.Steps.Where(s => since.Contains(BoxRebuild.Named(s)))];
    }

    private RepairStep Step(RebuildStep step)
    {
        var guide = RebuildGuide.Of(step);
        var say = step == RebuildStep.Remake ? $"{guide.Title}, {string.Join(", ", option.Parts.Where(p => p.Unit.Length == 0).Select(p => $"{p.Count:0} x {p.What}"))}: {guide.Says.TrimEnd('.')}" : $"{guide.Title}: {guide.Says.TrimEnd('.')}";
        IReadOnlyList<Fact> failed = step == RebuildStep.Retest ? [new QuestionOpenedFact { Id = $"box-{box.Id}-{box.Site.Notebook.History.Facts.Steps.Count}", Text = $"What is still wrong after the joints of {where} were remade?", About = box.Id }] : [];
        return new RepairStep(BoxRebuild.Named(step), say, where, Minutes(step), guide.Caution, step == RebuildStep.Retest ? "each station opens, waters its place alone, and reads as its neighbours do" : null, [.. Notes(step), Noted(step)], failed);
    }

    private StepFact Noted(RebuildStep step) => option.Kind == RepairKind.Joint
        ? BoxRebuild.Noted(box.Id, step) with { Job = JointJob }
        : BoxRebuild.Noted(box.Id, step);

    /// <summary>Each joint that was remade, by what it carries, so that it is known what it cured.</summary>
    private IEnumerable<Fact> Notes(RebuildStep step) => step switch
    {
        RebuildStep.Remake => Joints.Select(j => new WorkFact { Did = BoxRebuild.Remaking, Place = box.Id, Target = j.Station }),
        _ => [],
    };

    private decimal Minutes(RebuildStep step)
    {
        var ends = Joints.Sum(j => j.Wires.Count);
        return step switch
        {
            RebuildStep.Clear => RepairLines.Mean(book.ClearMinutes),
            RebuildStep.Tag => CostLine.Exact((double)(RepairLines.Mean(book.EndMinutes) * ends / 2)),
            RebuildStep.Free => CostLine.Exact((double)(RepairLines.Mean(book.EndMinutes) * ends / 2)),
            RebuildStep.Remake => RepairLines.Mean(book.JointMinutes) * Joints.Count,
            RebuildStep.Retest => RepairLines.Mean(book.StationMinutes) * box.StationsOf(Joints).Count,
            RebuildStep.House => RepairLines.Mean(book.HouseMinutes),
            _ => 0,
        };
    }
}
