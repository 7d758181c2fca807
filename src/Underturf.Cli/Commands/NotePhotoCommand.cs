using System.CommandLine;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Cli.Commands;

/// <summary>Notes a photo: its bytes go beside the log as they are, the log gets their hash.</summary>
internal static class NotePhotoCommand
{
    public static Command Make()
    {
        var log = Arguments.Log();
        var file = new Option<FileInfo>("--file") { Description = "The photo, as the camera wrote it.", Required = true };
        var place = new Option<string>("--place") { Description = "The place where it was taken, by label or id." };
        var about = new Option<string>("--about") { Description = "The thing it shows, by label or id." };
        var caption = new Option<string>("--caption") { Description = "What it shows, in your words." };
        var (property, data, again) = (Arguments.Property(), Arguments.Data(), Arguments.Again());
        var command = new Command("photo", "Note a photo; a copy is kept in the folder \"photos\" beside the log.") { log, file, place, about, caption, property, data, again };
        command.SetAction(parsed =>
        {
            var target = parsed.GetRequiredValue(log);
            var writer = new NoteWriter(target, parsed.GetValue(property), new WriterFolder(parsed.GetValue(data)));
            return Note(target, writer, parsed.GetRequiredValue(file), photo => photo with
            {
                Place = writer.IdOf("--place", parsed.GetValue(place)),
                About = writer.IdOf("--about", parsed.GetValue(about)),
                Caption = parsed.GetValue(caption),
            }, parsed.GetValue(again));
        });
        return command;
    }

    private static int Note(FileInfo log, NoteWriter writer, FileInfo file, Func<PhotoFact, PhotoFact> said, bool again)
    {
        var bytes = Files.Bytes(file);
        var head = PictureHead.Read(bytes) ?? throw new Refusal(new Problem(file.Name, "is no picture of a form that is known", $"Save it as one of: {string.Join(", ", PhotoFile.MediaTypes)}"));
        var photo = said(new PhotoFact { Hash = PhotoFile.HashOf(bytes), Media = head.Media, Width = head.Width, Height = head.Height });
        // A log that cannot be noted in is refused before anything is copied; the picture is there before the log names it.
        _ = writer.Property;
        using var copy = new MemoryStream(bytes);
        PhotoCopy.Keep(PhotoSource.PathOf(log.FullName, photo), copy);
        return writer.Write([new Draft(1, BodyText.Write(photo), photo)], again);
    }
}
