using System.Runtime.InteropServices.JavaScript;

namespace Underturf.FieldApp.Browser;

/// <summary>The page's side of the notes kept on the device (wwwroot/field-log.js). An answer with "failed" names what kept it from being done.</summary>
internal static partial class DeviceCalls
{
    private const string Module = "field-log";

    public static Task ReadyAsync() => JSHost.ImportAsync(Module, "../field-log.js");

    [JSImport("state", Module)]
    public static partial Task<JSObject> StateAsync();

    [JSImport("read", Module)]
    public static partial Task<JSObject> ReadAsync(string log, double after);

    [JSImport("add", Module)]
    public static partial Task<JSObject> AddAsync(string log, byte[] lines, string? writer, double seq, string? desk);

    [JSImport("replace", Module)]
    public static partial Task<JSObject> ReplaceAsync(string log, byte[] lines);

    [JSImport("remember", Module)]
    public static partial Task<JSObject> RememberAsync(string log, bool isOpen);

    [JSImport("remove", Module)]
    public static partial Task<JSObject> RemoveAsync(string gone);

    [JSImport("keepDesk", Module)]
    public static partial Task<JSObject> KeepDeskAsync(string desk);

    [JSImport("hold", Module)]
    public static partial Task<int> HoldAsync();

    [JSImport("release", Module)]
    public static partial void Release(int number);

    [JSImport("showHead", Module)]
    public static partial void ShowHead();

    [JSImport("listen", Module)]
    public static partial void Listen([JSMarshalAs<JSType.Function<JSType.String>>] Action<string> told);

    [JSImport("handOut", Module)]
    public static partial void HandOut(string name, byte[] bytes);
}
