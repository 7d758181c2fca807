using System.Runtime.InteropServices.JavaScript;
using Underturf.Quantities;

namespace Underturf.FieldApp.Browser;

/// <summary>Where the browser says the device is (wwwroot/whereabouts.js).</summary>
internal sealed partial class BrowserWhereabouts : IWhereabouts
{
    private const string Module = "whereabouts";
    private const string Place = "this device";

    public async Task<Outcome<Fix>> FindAsync()
    {
        await JSHost.ImportAsync(Module, "../whereabouts.js");
        using var said = await AskAsync();
        return said.GetPropertyAsString("failed") switch
        {
            null => new Fix(said.GetPropertyAsDouble("latitude"), said.GetPropertyAsDouble("longitude"), said.GetPropertyAsDouble("accuracy")),
            "denied" => new Problem(Place, "the browser may not tell it", "Allow this page to see the position, in the browser's settings for it"),
            "absent" => new Problem(Place, "this browser cannot tell it", "Tie things to fixed marks instead"),
            _ => new Problem(Place, "the device has not found it", "Step out from under the trees and ask again"),
        };
    }

    [JSImport("find", Module)]
    private static partial Task<JSObject> AskAsync();
}
