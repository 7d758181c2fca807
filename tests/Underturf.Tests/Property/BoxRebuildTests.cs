using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Tests.Property;

/// <summary>The rebuild of one invented box, step by step.</summary>
public sealed class BoxRebuildTests
{
    private readonly Diary diary = new();
    private int minute;

    public BoxRebuildTests()
    {
        Note(new BoxFact { Id = "b", Label = "7" });
        Note(new ControllerFact { Id = "c", Terminals = 4 });
        Note(new StationFact { Id = "s", Controller = "c", Terminal = 1 });
        Note(new EndFact { Id = "e1", Place = "b", Station = "s" });
        Note(new EndFact { Id = "e2", Place = "b", Mates = ["e1"] });
        Note(new EndFact { Id = "e3", Place = "b" });
    }

    private BoxRebuild Rebuild => BoxRebuild.Of(diary.Fold(), BoxCard.Of(diary.Fold(), "b")!);

    private EntryId Note(Fact fact) => diary.Note(++minute, fact);

    private void Do(params RebuildStep[] steps) => Array.ForEach(steps, step => Note(BoxRebuild.Noted("b", step)));

    [Fact]
    public void Nothing_is_begun_before_the_first_step_and_it_goes_on_at_the_first_that_is_not_done()
    {
        Assert.Equal((false, RebuildStep.Clear), (Rebuild.IsBegun, Rebuild.Next));
        Do(RebuildStep.Clear, RebuildStep.Tag);
        Assert.Equal((true, RebuildStep.Photograph), (Rebuild.IsBegun, Rebuild.Next));
    }

    [Fact]
    public void Freeing_is_done_when_every_conductor_end_is_free()
    {
        Do(RebuildStep.Clear, RebuildStep.Photograph, RebuildStep.Tag);
        Note(BoxRebuild.Noted("b", RebuildStep.Free, "e1"));
        Note(BoxRebuild.Noted("b", RebuildStep.Free, "e2"));
        Assert.Equal(RebuildStep.Free, Rebuild.Next);
        Note(BoxRebuild.Noted("b", RebuildStep.Free, "e3"));
        Assert.Equal(RebuildStep.Remake, Rebuild.Next);
        Assert.Equal(["e1", "e2", "e3"], Rebuild.Freed.Order());
    }

    [Theory]
    [InlineData("e2")]
    [InlineData("s")]
    [InlineData("b")]
    public void A_joint_is_remade_by_the_repair_noted_on_one_of_its_ends_its_station_or_the_box(string target)
    {
        Do(RebuildStep.Clear, RebuildStep.Photograph, RebuildStep.Tag, RebuildStep.Free);
        Note(new WorkFact { Did = BoxRebuild.Remaking, Place = "b", Target = target });
        Assert.Equal(RebuildStep.Retest, Rebuild.Next);
        Assert.Contains("e1", Rebuild.Remade);
    }

    [Fact]
    public void Work_done_before_the_rebuild_or_in_another_box_remakes_nothing()
    {
        Note(new WorkFact { Did = BoxRebuild.Remaking, Place = "b", Target = "e1" });
        Do(RebuildStep.Clear);
        Note(new BoxFact { Id = "b2" });
        Note(new WorkFact { Did = BoxRebuild.Remaking, Place = "b2", Target = "s" });
        Assert.Empty(Rebuild.Remade);
    }

    [Fact]
    public void A_box_that_was_housed_is_finished_and_a_step_after_it_begins_the_next_round()
    {
        Do([.. BoxRebuild.Steps]);
        Assert.True(Rebuild.IsFinished);
        Do(RebuildStep.Clear);
        Assert.Equal((false, RebuildStep.Photograph), (Rebuild.IsFinished, Rebuild.Next));
    }

    [Fact]
    public void How_it_was_left_is_asked_again_after_another_step()
    {
        Do(RebuildStep.Clear);
        Assert.Null(Rebuild.LeftAs);
        Note(new LeftAsFact { Place = "b", State = "hole open, covered" });
        Assert.Equal("hole open, covered", Rebuild.LeftAs!.Fact.State);
        Do(RebuildStep.Photograph);
        Assert.Null(Rebuild.LeftAs);
    }

    [Fact]
    public void A_step_taken_back_is_to_be_done_again()
    {
        var step = Note(BoxRebuild.Noted("b", RebuildStep.Clear));
        Note(new StrikeFact { Entry = step.ToString() });
        Assert.False(Rebuild.IsBegun);
    }
}
