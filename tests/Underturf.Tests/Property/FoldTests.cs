using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Simulation;

namespace Underturf.Tests.Property;

public sealed class FoldTests
{
    [Fact]
    public void The_fold_does_not_depend_on_the_order_of_lines()
    {
        var logs = Enumerable.Range(1, 25).Select(seed => WorldGenerator.Make((ulong)seed, PracticeBook.Default).Log).Append(MemorialGarden.Make(PracticeBook.Default).Log);
        var chance = new SeededGenerator(7);
        foreach (var log in logs)
        {
            var expected = Folding.Printed(PropertyHistory.Fold(log.Standing));
            for (var i = 0; i < 4; i++)
            {
                Assert.Equal(expected, Folding.Printed(PropertyHistory.Fold(log.Standing.Shuffled(chance))));
            }
        }
    }

    [Fact]
    public void Folding_on_note_by_note_is_the_fold_of_all_of_them_and_a_note_of_an_earlier_time_says_that_it_is_not()
    {
        var standing = MemorialGarden.Make(PracticeBook.Default).Log.Standing.OrderBy(entry => entry.Moment).ToList();
        var grown = standing[1..].Aggregate(PropertyHistory.Fold(standing[..1]), (history, entry) =>
        {
            // A view that was asked for is the longer history's too, where the note leaves it as it is.
            Assert.NotNull(history.Now);
            return history.With(entry)!;
        });
        Assert.Equal(Folding.Printed(PropertyHistory.Fold(standing)), Folding.Printed(grown));
        Assert.Null(grown.With(standing[^2]));
    }

    [Fact]
    public void Lines_of_the_file_in_any_order_are_the_same_property()
    {
        var log = MemorialGarden.Make(PracticeBook.Default).Log;
        var expected = Folding.Printed(PropertyHistory.Fold(log.Standing));
        var chance = new SeededGenerator(8);
        for (var i = 0; i < 5; i++)
        {
            byte[] bytes = [.. log.Entries.Shuffled(chance).SelectMany(e => (byte[])[.. e.Line.Span, (byte)'\n'])];
            Assert.Equal(expected, Folding.Printed(PropertyHistory.Fold(LogDocument.Read(bytes).Standing)));
        }
    }

    [Fact]
    public void Two_boxes_that_are_the_same_are_one_with_what_both_notes_say()
    {
        var diary = TwoBoxes();
        diary.Note(3, new SameAsFact { A = "box-b", B = "box-a" });
        var view = diary.Fold().Now;
        var (id, box) = Assert.Single(view.Boxes);
        Assert.Equal("box-a", id);
        Assert.Equal(("jumbo", "seven"), (box.Size, box.Label));
        Assert.Equal(view.Name("box-a"), view.Name("box-b"));
        Assert.Equal(new Position(4, 5), view.PositionOf("box-b"));
    }

    [Fact]
    public void A_struck_same_as_parts_them_again()
    {
        var diary = TwoBoxes();
        var joined = diary.Note(3, new SameAsFact { A = "box-b", B = "box-a" });
        diary.Note(4, new StrikeFact { Entry = joined.ToString() });
        Assert.Equal(["box-a", "box-b"], diary.Fold().Now.Boxes.Keys);
    }

    [Fact]
    public void Same_as_said_twice_crosswise_or_in_a_ring_is_still_one_thing()
    {
        var diary = TwoBoxes();
        diary.Note(3, new BoxFact { Id = "box-c" });
        diary.Note(4, new SameAsFact { A = "box-a", B = "box-b" });
        diary.Note(5, new SameAsFact { A = "box-b", B = "box-c" });
        diary.Note(6, new SameAsFact { A = "box-c", B = "box-a" });
        diary.Note(7, new SameAsFact { A = "box-b", B = "box-a" });
        Assert.Single(diary.Fold().Now.Boxes);
    }

    [Fact]
    public void A_later_note_keeps_what_it_leaves_out()
    {
        var diary = new Diary();
        diary.Note(1, new BoxFact { Id = "b", Label = "by the gate", Size = "10 in round" });
        diary.Note(2, new BoxFact { Id = "b", Size = "jumbo" });
        var box = diary.Fold().Now.Boxes["b"];
        Assert.Equal(("by the gate", "jumbo"), (box.Label, box.Size));
    }

    [Fact]
    public void Every_moment_is_told_by_the_clock_of_the_property_whoever_noted_it_by_which()
    {
        var diary = new Diary();
        diary.Note(1, new LeftAsFact { Place = "b", State = "hole open" });
        diary.Note(2, new PropertyFact { Name = "garden", Zone = "America/Denver" });
        diary.Note(300 * 24 * 60, new LeftAsFact { Place = "b", State = "closed" });
        var history = diary.Fold();
        Assert.Equal([TimeSpan.FromHours(-6), TimeSpan.FromHours(-7)], history.Facts.LeftAs.Select(left => left.At.Offset));
        Assert.Equal([Diary.Eight.AddMinutes(1), Diary.Eight.AddDays(300)], history.Facts.LeftAs.Select(left => left.At));
    }

    [Fact]
    public void A_zone_that_is_noted_later_is_the_clock_of_what_was_noted_before()
    {
        var diary = new Diary();
        diary.Note(1, new PropertyFact { Name = "garden", Zone = "Etc/UTC" });
        diary.Note(2, new LeftAsFact { Place = "b", State = "hole open" });
        var before = diary.Fold();
        diary.Note(3, new PropertyFact { Name = "garden", Zone = "Etc/GMT+6" });
        Assert.Null(before.With(diary.Log().Entries[^1]));
        Assert.Equal(TimeSpan.FromHours(-6), diary.Fold().Facts.LeftAs[0].At.Offset);
    }

    private static Diary TwoBoxes()
    {
        var diary = new Diary();
        diary.Note(1, new BoxFact { Id = "box-a", Size = "jumbo", Label = "one" });
        diary.Note(2, new BoxFact { Id = "box-b", Label = "seven", Position = new Position(4, 5) });
        return diary;
    }
}
