using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>What a page asks of the device for the picture beneath the plan of a property, which its id names.</summary>
public interface IBackdropShelf
{
    /// <summary>Keeps the picture that was chosen in an input of the page, in place of one before.</summary>
    /// <returns>Its size in pixels, upright.</returns>
    Task<Outcome<(int Width, int Height)>> TakeAsync(string property, string input);

    /// <summary>How the picture lies, as it was kept, and its address; nothing where there is none.</summary>
    /// <param name="name">What people call the property: an earlier build kept the picture under that, which two of them can share.</param>
    Task<(Backdrop Picture, string Address)?> FindAsync(string property, string name);

    /// <summary>Keeps how the picture lies.</summary>
    Task<Problem?> KeepAsync(string property, Backdrop picture);

    /// <summary>Takes the picture away.</summary>
    Task ForgetAsync(string property);
}
