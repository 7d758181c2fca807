using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.Cli;

/// <summary>Photos that are noted and whose file is not there, or is another.</summary>
internal static class PhotoCheck
{
    public static IEnumerable<Problem> Problems(FileInfo log, PropertyHistory history)
    {
        using var source = new PhotoSource(log);
        foreach (var photo in PhotoAlbum.Of(history).All)
        {
            var (fact, entry) = (photo.Fact, photo.Entry);
            switch (source.Holds(fact))
            {
                case null:
                    yield return new Problem(entry.ToString(), $"names a photo whose file '{PhotoFile.NameOf(fact)}' is not there", "Copy it beside the log from the phone that took it, or leave it: the log is whole without it", Severity.Notice);
                    break;
                case false:
                    yield return new Problem(entry.ToString(), $"names a photo whose file '{PhotoFile.NameOf(fact)}' has other bytes than were noted", "Copy it again from the phone that took it: it was changed or damaged");
                    break;
            }
        }
    }
}
