using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.Property;

public sealed class EpochTests
{
    private static readonly Length Small = new(0.0254), Large = new(0.0508);

    [Fact]
    public void What_was_seen_before_the_work_holds_before_and_what_was_seen_after_holds_after()
    {
        var history = Rebuilt().Fold();
        Assert.Equal(Small, history.At(Moment.EndOf(Diary.Eight.AddMinutes(5))).Valves["v"].Size);
        Assert.Equal(Large, history.At(Moment.EndOf(Diary.Eight.AddMinutes(25))).Valves["v"].Size);
        Assert.Equal(Large, history.Now.Valves["v"].Size);
    }

    [Fact]
    public void The_moment_of_the_work_itself_belongs_to_after()
    {
        var history = Rebuilt().Fold();
        Assert.Equal(0, history.EpochAt(Moment.EndOf(Diary.Eight.AddMinutes(9))));
        Assert.Equal(1, history.EpochAt(Moment.EndOf(Diary.Eight.AddMinutes(10))));
    }

    [Fact]
    public void Notes_of_one_moment_keep_the_order_in_which_they_were_noted()
    {
        var diary = new Diary();
        diary.Note(1, new ValveFact { Id = "v", Size = Small }, wasSoMinutes: 0);
        diary.Note(2, new WorkFact { Did = "valve rebuilt", Target = "v" }, wasSoMinutes: 0);
        diary.Note(3, new ValveFact { Id = "v", Size = Large }, wasSoMinutes: 0);
        var history = diary.Fold();
        Assert.Equal(Small, history.At(history.Facts.Valves[0].Moment).Valves["v"].Size);
        Assert.Equal(Large, history.Now.Valves["v"].Size);
    }

    [Fact]
    public void Work_opens_no_epoch_for_what_it_did_not_touch()
    {
        var diary = Rebuilt();
        diary.Note(21, new ValveFact { Id = "other", Size = Small });
        diary.Note(22, new ValveFact { Id = "other", Size = Large });
        Assert.Equal(Large, diary.Fold().At(Moment.EndOf(Diary.Eight.AddMinutes(5))).Valves["other"].Size);
    }

    [Fact]
    public void What_no_epoch_contradicts_holds_in_all()
    {
        var diary = Rebuilt();
        diary.Note(23, new ValveFact { Id = "v", Body = "brass" });
        Assert.Equal("brass", diary.Fold().At(Moment.EndOf(Diary.Eight)).Valves["v"].Body);
    }

    [Fact]
    public void A_back_dated_note_is_judged_in_its_epoch()
    {
        var diary = Rebuilt();
        diary.Note(40, new ValveFact { Id = "v", Screws = 4 }, wasSoMinutes: 2);
        diary.Note(41, new ValveFact { Id = "v", Screws = 6 }, wasSoMinutes: 20);
        diary.Note(42, new ValveFact { Id = "v", Screws = 5 }, wasSoMinutes: 3);
        var history = diary.Fold();
        Assert.Equal(5, history.At(Moment.EndOf(Diary.Eight)).Valves["v"].Screws);
        Assert.Equal(6, history.Now.Valves["v"].Screws);
    }

    [Fact]
    public void Struck_work_opens_no_epoch()
    {
        var diary = new Diary();
        diary.Note(1, new ValveFact { Id = "v", Size = Small });
        var work = diary.Note(10, new WorkFact { Did = "valve rebuilt", Target = "v" });
        diary.Note(20, new ValveFact { Id = "v", Size = Large });
        diary.Note(30, new StrikeFact { Entry = work.ToString() });
        var history = diary.Fold();
        Assert.Empty(history.WorkTimes);
        Assert.Equal(Large, history.At(Moment.EndOf(Diary.Eight)).Valves["v"].Size);
    }

    [Fact]
    public void Work_on_one_of_two_ids_of_a_thing_is_work_on_the_thing()
    {
        var diary = Rebuilt();
        diary.Note(31, new ValveFact { Id = "w" });
        diary.Note(32, new SameAsFact { A = "v", B = "w" });
        Assert.Equal(Small, diary.Fold().At(Moment.EndOf(Diary.Eight.AddMinutes(5))).Valves["v"].Size);
    }

    private static Diary Rebuilt()
    {
        var diary = new Diary();
        diary.Note(1, new ValveFact { Id = "v", Size = Small });
        diary.Note(10, new WorkFact { Did = "valve rebuilt", Target = "v" });
        diary.Note(20, new ValveFact { Id = "v", Size = Large });
        return diary;
    }
}
