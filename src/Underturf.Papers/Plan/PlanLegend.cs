using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Papers;

/// <summary>The column beside the map: what the signs mean, which questions the marked places belong to, what could not be drawn.</summary>
internal sealed class PlanLegend(SheetColumn column)
{
    public void Fill(PlanContent content, PaperMatter matter)
    {
        Things(content);
        Lines(content);
        Ground(content);
        Ties(content);
        Questions(matter);
        Notes(content);
    }

    private void Things(PlanContent content)
    {
        column.Head("Found or told");
        foreach (var (kind, holds, word) in new[] { (ThingKind.Controller, false, "controller"), (ThingKind.Box, true, "box with valves"), (ThingKind.Box, false, "box"), (ThingKind.Valve, true, "valve without a box"), (ThingKind.IsolationValve, false, "isolation valve"), (ThingKind.PointOfConnection, false, "point of connection") })
        {
            if (content.Things.Any(t => t.Kind == kind && (t.HoldsValves == holds || kind == ThingKind.Controller)))
            {
                column.Sign(Symbols.Draw(kind, SheetColumn.Left + 14, column.Y, Grade.Measured, holds), word);
            }
        }

        column.Sign(Svg.Circle(SheetColumn.Left + 14, column.Y, Symbols.Radius + 1, ("fill", "none"), ("stroke", Inks.Hex(Ink.Accent)), ("stroke-width", "3")), "an explanation points here");
    }

    private void Lines(PlanContent content)
    {
        column.Head("How it is known");
        foreach (var (grade, word) in GradeMark.Legend.Where(g => g.Grade != Grade.Unknown))
        {
            column.Sign(Symbols.Run([(SheetColumn.Left, column.Y), (SheetColumn.Left + 28, column.Y)], grade), word);
        }

        column.Sign(Symbols.Draw(ThingKind.Box, SheetColumn.Left + 14, column.Y, Grade.Unknown, false), "unknown");
        if (content.Pipes.Count > 0)
        {
            column.Sign(Symbols.Pipe([(SheetColumn.Left, column.Y), (SheetColumn.Left + 28, column.Y)], Grade.Measured), "pipe: broad, by the same lines");
        }
    }

    private void Ground(PlanContent content)
    {
        var kinds = content.Ground.Select(GroundDrawing.Kind).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        if (kinds.Count > 0)
        {
            column.Head("Ground");
        }

        foreach (var kind in kinds)
        {
            column.Sign(GroundDrawing.Sample(kind, SheetColumn.Left, column.Y), kind switch { "tree" => "tree, its trunk to scale", GroundShape.UtilityMark => "utility mark: by hand beside it", _ => kind });
        }

        if (content.Roots.Count > 0)
        {
            column.Sign(RootDrawing.Sample(SheetColumn.Left, column.Y), "roots protected: hand or air only");
        }
    }

    private void Ties(PlanContent content)
    {
        if (content.Ties.Count > 0)
        {
            column.Head("Ties");
            column.Sign(TieDrawing.Sample(SheetColumn.Left, column.Y), "taped from a mark");
            column.Sign(Svg.Circle(SheetColumn.Left + 14, column.Y, 8, TieDrawing.Look(Grade.Measured)), "ring: one tie only");
        }

        if (content.Tied.Count > 0)
        {
            column.Sign(TieDrawing.EllipseSample(SheetColumn.Left, column.Y), "it lies here 95 times in 100");
        }
    }

    private void Questions(PaperMatter matter)
    {
        var questions = matter.Answers.Questions;
        if (questions.Count > 0)
        {
            column.Head("Open questions, as in the findings");
        }

        for (var i = 0; i < Math.Min(questions.Count, 12); i++)
        {
            var first = questions[i].Explanations is [var leading, ..] ? leading.Summary : "nothing yet";
            column.Paragraph($"{i + 1}  {QuestionPart.Name(questions[i]).Head}: {first}", 4);
        }

        if (questions.Count > 12)
        {
            column.Paragraph($"and {questions.Count - 12} more", 1);
        }
    }

    private void Notes(PlanContent content)
    {
        if (content.NotDrawn.Count > 0)
        {
            column.Head("Not drawn");
        }

        foreach (var note in content.NotDrawn)
        {
            column.Paragraph(note, 8);
        }
    }
}
