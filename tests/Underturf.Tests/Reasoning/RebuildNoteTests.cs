using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Tests.Reasoning;

/// <summary>What the notes of a box rebuild do to belief, on the demo property.</summary>
public sealed class RebuildNoteTests
{
    private static readonly LogDocument demo = LogDocument.Read(File.ReadAllBytes(Path.Combine(Repository.Root, "samples", "memorial-garden", "log.jsonl")));

    [Fact]
    public void The_steps_of_a_rebuild_change_no_explanation_no_move_and_give_no_notice()
    {
        var (before, after) = (Notebook.Open(demo, PracticeBook.Default), Notebook.Open(Rebuilt(), PracticeBook.Default));
        Assert.Equal(7, after.History.Facts.Steps.Count);
        Assert.Equal(AnswersJson.Write(before.Answer()), AnswersJson.Write(after.Answer()));
        Assert.Equal(before.Problems, after.Problems);
    }

    private static LogDocument Rebuilt()
    {
        var log = demo;
        foreach (var step in BoxRebuild.Steps)
        {
            var noted = HybridTime.Next(log.LastNoted ?? default, 0);
            log = log.With(Pen.Seal(log.Property!, "page-x", log.LastHeader("page-x"), noted, BoxRebuild.Noted("b10", step)).Value);
        }

        return log;
    }
}
