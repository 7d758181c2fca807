using System.Text.RegularExpressions;

namespace Underturf.Architecture;

/// <summary>What the page starts without: the project file and the script that fetches it name the same.</summary>
public sealed partial class LateRoomTests
{
    private const string Host = "src/Underturf.FieldApp.Browser/";

    [Fact]
    public void The_script_that_fetches_late_rooms_names_only_those_that_the_project_leaves_out_of_the_start()
    {
        var late = LateItem().Matches(Repository.Read(Host + "Underturf.FieldApp.Browser.csproj")).SelectMany(item => item.Groups["files"].Value.Split(';')).ToList();
        var named = Quoted().Matches(Repository.Read(Host + "wwwroot/rooms.js")).Select(name => name.Groups["file"].Value).ToList();
        Assert.True(named.Count > 3);
        Assert.Empty(named.Except(late));
        Assert.Equal(late.Distinct().Count(), late.Count);
    }

    [Fact]
    public void Every_room_comes_late()
    {
        var named = Quoted().Matches(Repository.Read(Host + "wwwroot/rooms.js")).Select(name => Path.GetFileNameWithoutExtension(name.Groups["file"].Value));
        Assert.Empty(Arrows.Reach("Underturf.FieldApp.Browser").Except(named).Except(["Underturf.Papers"]));
    }

    [GeneratedRegex("<BlazorWebAssemblyLazyLoad Include=\"(?<files>[^\"]+)\"", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex LateItem();

    [GeneratedRegex("\"(?<file>[\\w.]+\\.wasm)\"", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Quoted();
}
