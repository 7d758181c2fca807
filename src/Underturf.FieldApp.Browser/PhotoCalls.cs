using System.Runtime.InteropServices.JavaScript;

namespace Underturf.FieldApp.Browser;

/// <summary>The page's side of the photos kept on the device (wwwroot/photos.js). An answer with "failed" names what kept it from being done.</summary>
internal static partial class PhotoCalls
{
    private const string Module = "photos";

    public static Task ReadyAsync() => JSHost.ImportAsync(Module, "../photos.js");

    [JSImport("take", Module)]
    public static partial Task<JSObject> TakeAsync(string input);

    [JSImport("again", Module)]
    public static partial Task<JSObject> TakeAgainAsync();

    [JSImport("handOutInHand", Module)]
    public static partial void HandOutInHand();

    [JSImport("small", Module)]
    public static partial Task<string?> SmallAsync(string hash);

    [JSImport("show", Module)]
    public static partial Task ShowAsync(string hash, string name, string words);

    [JSImport("unsaved", Module)]
    public static partial Task<string> UnsavedAsync(string[] hashes);

    [JSImport("takeOff", Module)]
    public static partial Task<JSObject> ForgetAsync(string[] hashes);

    [JSImport("handOutPack", Module)]
    public static partial Task<JSObject> HandOutPackAsync(string name, string logName, byte[] log, string[] names, string[] hashes);

    [JSImport("takeInPack", Module)]
    public static partial Task<JSObject> TakeInPackAsync(string input);
}
