using System.Xml.Linq;
using Underturf.FieldLog;

namespace Underturf.Papers;

/// <summary>The column beside the map: what the signs mean, which questions the marked places belong to, what could not be drawn.</summary>
internal sealed class PlanLegend(double left, double width)
{
    private const double Row = 24, TextRow = 16;

    private static readonly TextStyle measure = new(Weight.Regular, 13, Ink.Ink);

    private readonly List<XElement> drawn = [];
    private double y = PlanFrame.MapTop + 16;

    public double BottomUnits => y;

    public XElement Draw(PlanContent content, PaperMatter matter)
    {
        Things(content);
        Lines();
        Ground(content);
        Ties(content);
        Questions(matter);
        Notes(content);
        return Svg.Group("legend", drawn);
    }

    private void Things(PlanContent content)
    {
        Head("Found or told");
        foreach (var (kind, holds, word) in new[] { (ThingKind.Controller, false, "controller"), (ThingKind.Box, true, "box with valves"), (ThingKind.Box, false, "box"), (ThingKind.Valve, true, "valve without a box") })
        {
            if (content.Things.Any(t => t.Kind == kind && (t.HoldsValves == holds || kind == ThingKind.Controller)))
            {
                Sign(Symbols.Draw(kind, left + 14, y, Grade.Measured, holds), word);
            }
        }

        Sign(Svg.Circle(left + 14, y, Symbols.Radius + 1, ("fill", "none"), ("stroke", Inks.Hex(Ink.Accent)), ("stroke-width", "3")), "an explanation points here");
    }

    private void Lines()
    {
        Head("How it is known");
        foreach (var (grade, word) in GradeMark.Legend.Where(g => g.Grade != Grade.Unknown))
        {
            Sign(Symbols.Run([(left, y), (left + 28, y)], grade), word);
        }

        Sign(Symbols.Draw(ThingKind.Box, left + 14, y, Grade.Unknown, false), "unknown");
    }

    private void Ground(PlanContent content)
    {
        var kinds = content.Ground.Select(GroundDrawing.Kind).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        if (kinds.Count > 0)
        {
            Head("Ground");
        }

        foreach (var kind in kinds)
        {
            Sign(GroundDrawing.Sample(kind, left, y), kind == "tree" ? "tree, its trunk to scale" : kind);
        }
    }

    private void Ties(PlanContent content)
    {
        if (content.Ties.Count > 0)
        {
            Head("Ties");
            Sign(TieDrawing.Sample(left, y), "taped from a mark");
            Sign(Svg.Circle(left + 14, y, 8, TieDrawing.Look(Grade.Measured)), "ring: one tie only");
        }

        if (content.Tied.Count > 0)
        {
            Sign(TieDrawing.EllipseSample(left, y), "it lies here 95 times in 100");
        }
    }

    private void Questions(PaperMatter matter)
    {
        var questions = matter.Answers.Questions;
        if (questions.Count > 0)
        {
            Head("Open questions, as in the findings");
        }

        for (var i = 0; i < Math.Min(questions.Count, 12); i++)
        {
            var first = questions[i].Explanations is [var leading, ..] ? leading.Summary : "nothing yet";
            Paragraph($"{i + 1}  {QuestionPart.Name(questions[i]).Head}: {first}", 4);
        }

        if (questions.Count > 12)
        {
            Paragraph($"and {questions.Count - 12} more", 1);
        }
    }

    private void Notes(PlanContent content)
    {
        if (content.NotDrawn.Count > 0)
        {
            Head("Not drawn");
        }

        foreach (var note in content.NotDrawn)
        {
            Paragraph(note, 8);
        }
    }

    private void Head(string text)
    {
        y += 8;
        drawn.Add(Svg.Text(left, y, text, "head"));
        y += Row;
    }

    private void Sign(XElement sign, string word)
    {
        drawn.Add(sign);
        drawn.Add(Svg.Text(left + 40, y + 4.5, word, "body"));
        y += Row;
    }

    private void Paragraph(string text, int mostLines)
    {
        var room = width / PlanLabel.StandInFaceRatio;
        foreach (var line in TextWrap.Lines(Shorten.Name(text, measure, room, mostLines), measure, room))
        {
            drawn.Add(Svg.Text(left, y, line, "body"));
            y += TextRow;
        }

        y += 6;
    }
}
