using Microsoft.AspNetCore.Components;
using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.FieldApp;

/// <summary>Photos: which of them stand in no copy, the pack of log and photos, and a pack that is opened.</summary>
public sealed partial class NotebookPage
{
    private IReadOnlyList<PhotoFact> photos = [];
    private PropertyHistory? counted;
    private IReadOnlyList<PhotoFact> unsaved = [];

    [Inject]
    private IPhotoShelf Shelf { get; set; } = null!;

    /// <summary>What stands in no copy yet, in words.</summary>
    private string? NotBackedUp => (log.NotBackedUp, unsaved.Count) switch
    {
        (0, 0) => null,
        (0, var alone) => Wording.Photos(alone),
        (var notes, 0) => Wording.Notes(notes),
        var (notes, alone) => $"{Wording.Notes(notes)}, {Wording.Photos(alone)}",
    };

    /// <summary>Counts them anew where the notes have changed.</summary>
    private async Task CountPhotosAsync()
    {
        if (log is null || ReferenceEquals(counted, log.History))
        {
            return;
        }

        counted = log.History;
        var all = PhotoAlbum.Of(counted).All.Select(photo => photo.Fact).ToList();
        var alone = all.Count == 0 ? [] : await Shelf.UnsavedAsync(all);
        if (all.Count > 0 || photos.Count > 0)
        {
            (photos, unsaved) = (all, alone);
            StateHasChanged();
        }
    }

    /// <summary>Hands out the log, with the photos that stand in no copy yet where there are any: evening after evening all are saved, each once.</summary>
    private Task SaveCopyAsync() => unsaved.Count > 0 ? SavePackAsync(unsaved) : SaveLogAsync();

    private async Task SaveLogAsync() => undone = await log.HandOutAsync();

    private async Task SavePackAsync(IReadOnlyList<PhotoFact> with)
    {
        undone = await log.HandOutAsync((name, bytes) => Shelf.HandOutPackAsync(name, bytes, with));
        counted = null;
        await CountPhotosAsync();
    }

    private async Task OpenPackAsync((string Name, string Input) pack)
    {
        picked = true;
        await TakeAsync(pack.Name, await Shelf.TakeInPackAsync(pack.Input));
        counted = null;
    }
}
