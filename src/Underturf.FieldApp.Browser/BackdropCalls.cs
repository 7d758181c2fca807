using System.Runtime.InteropServices.JavaScript;

namespace Underturf.FieldApp.Browser;

/// <summary>The page's side of the pictures beneath plans (wwwroot/backdrop.js). An answer with "failed" names what kept it from being done.</summary>
internal static partial class BackdropCalls
{
    private const string Module = "backdrop";

    public static Task ReadyAsync() => JSHost.ImportAsync(Module, "../backdrop.js");

    [JSImport("take", Module)]
    public static partial Task<JSObject> TakeAsync(string property, string input);

    [JSImport("find", Module)]
    public static partial Task<JSObject> FindAsync(string property, string name);

    [JSImport("keep", Module)]
    public static partial Task<JSObject> KeepAsync(string property, string laid);

    [JSImport("forget", Module)]
    public static partial Task<JSObject> ForgetAsync(string property);
}
