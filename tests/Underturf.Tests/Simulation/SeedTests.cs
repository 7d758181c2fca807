using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Simulation;

public sealed class SeedTests
{
    [Fact]
    public void The_same_seed_makes_the_same_bytes()
    {
        for (var seed = 1UL; seed <= 20; seed++)
        {
            var (a, b) = (WorldGenerator.Make(seed, PracticeBook.Default), WorldGenerator.Make(seed, PracticeBook.Default));
            Assert.True(a.Log.ToBytes().Span.SequenceEqual(b.Log.ToBytes().Span));
            Assert.Equal(a.Faults.Select(f => (f.Fault, f.Place)), b.Faults.Select(f => (f.Fault, f.Place)));
        }
    }

    [Fact]
    public void Another_seed_makes_another_property() => Assert.False(
        WorldGenerator.Make(1, PracticeBook.Default).Log.ToBytes().Span.SequenceEqual(WorldGenerator.Make(2, PracticeBook.Default).Log.ToBytes().Span));

    [Fact]
    public void A_whole_property_has_its_stations_its_faults_and_its_slips()
    {
        var slips = 0;
        for (var seed = 61UL; seed <= 66; seed++)
        {
            var stations = 20 + (40 * (int)(seed - 61));
            var world = WorldGenerator.Make(seed, PracticeBook.Default, WorldShape.Whole(stations, 4));
            var history = PropertyHistory.Fold(world.Log.Standing);
            Assert.Equal(stations, history.Now.Stations.Count);
            Assert.Equal(4, world.Faults.Count);
            Assert.Empty(world.Log.Problems);
            Assert.Empty(References.Problems(history));
            Assert.All(world.WrongNotes, w => Assert.Contains(history.Facts.Readings, r => r.Entry == w));
            slips += world.WrongNotes.Count;
        }

        Assert.InRange(slips, 3, 40);
    }

    [Fact]
    public void The_same_log_and_book_give_the_same_answer_byte_for_byte()
    {
        for (var seed = 41UL; seed <= 44; seed++)
        {
            var log = WorldGenerator.Make(seed, PracticeBook.Default).Log.ToBytes();
            string Answer() => AnswersJson.Write(Notebook.Answer(log, PracticeBook.Default));
            Assert.Equal(Answer(), Answer());
        }
    }

    [Fact]
    public void A_made_up_log_is_whole_and_has_nothing_to_complain_of_but_contradictions()
    {
        for (var seed = 51UL; seed <= 60; seed++)
        {
            var notebook = Notebook.Open(WorldGenerator.Make(seed, PracticeBook.Default).Log, PracticeBook.Default);
            Assert.Empty(notebook.Problems);
        }
    }
}
