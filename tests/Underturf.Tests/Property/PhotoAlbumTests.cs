using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Tests.Property;

/// <summary>Which photos belong to what, on invented notes.</summary>
public sealed class PhotoAlbumTests
{
    private static readonly string lid = new('a', 64);
    private static readonly string pit = new('b', 64);

    private static PhotoAlbum Album(params Fact[] facts)
    {
        var diary = new Diary();
        foreach (var (fact, minute) in facts.Select((fact, i) => (fact, i + 1)))
        {
            diary.Note(minute, fact);
        }

        return PhotoAlbum.Of(diary.Fold());
    }

    private static PhotoFact Photo(string hash) => new() { Hash = hash, Media = "image/jpeg" };

    [Fact]
    public void A_photo_belongs_to_its_place_to_what_it_is_about_and_to_every_note_that_has_it()
    {
        var photo = Album(
            Photo(lid) with { Place = "b7", About = "v1" },
            new LookFact { Place = "b8", Photos = [lid] },
            new ReadingFact { How = "station ohms", Stations = ["s9"], Value = Shown.OverRange, Photos = [lid] }).All.Single();
        Assert.Equal(["b7", "b8", "s9", "v1"], photo.Things.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_photo_noted_again_is_the_same_photo_with_what_was_said_of_it_meanwhile()
    {
        var photo = Album(Photo(lid) with { Width = 4000, Height = 3000 }, Photo(lid) with { Place = "b7", Caption = "lid cracked" }).All.Single();
        Assert.Equal((4000, "b7", "lid cracked"), (photo.Fact.Width, photo.Fact.Place, photo.Fact.Caption));
    }

    [Fact]
    public void Photos_of_one_thing_under_two_ids_are_found_under_the_one_that_stands_for_it()
    {
        var album = Album(Photo(lid) with { Place = "b8" }, Photo(pit) with { Place = "b7" }, new SameAsFact { A = "b7", B = "b8" });
        Assert.Equal([lid, pit], album.Of("b7").Select(photo => photo.Fact.Hash));
        Assert.Empty(album.Of("b8"));
    }

    [Fact]
    public void Photos_that_came_with_a_placed_one_are_where_it_is() =>
        Assert.Equal([lid, pit], Album(Photo(pit), Photo(lid) with { Place = "b7", Photos = [pit] }).Of("b7").Select(photo => photo.Fact.Hash).Order(StringComparer.Ordinal));

    [Fact]
    public void A_note_names_a_photo_that_nobody_noted_and_the_album_does_not_make_one_up() =>
        Assert.Empty(Album(new LookFact { Place = "b8", Photos = [lid] }).All);
}
