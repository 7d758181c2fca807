using System.Reflection;
using System.Xml.Linq;

namespace Underturf.Architecture;

public sealed class ArrowTests
{
    private static readonly string[] forbiddenInCore =
    [
        "System.Console", "System.Net", "System.Diagnostics.Process", "System.IO.FileSystem", "System.IO.Pipes",
        "System.Threading.Thread", "System.Data", "Microsoft.JSInterop.WebAssembly", "Microsoft.AspNetCore.Hosting",
        "Microsoft.AspNetCore.Http", "Microsoft.AspNetCore.Components.WebAssembly", "Microsoft.Data",
    ];

    public static TheoryData<string> Rooms => [.. Repository.Rooms];

    public static TheoryData<string> CoreRooms => [.. Arrows.Core];

    [Fact]
    public void Every_room_is_in_the_table_of_arrows_and_the_table_names_no_other() =>
        Assert.Equal(Arrows.Direct.Keys.Order(StringComparer.Ordinal), Repository.Rooms);

    [Fact]
    public void The_arrows_form_no_cycle() =>
        Assert.All(Arrows.Direct.Keys, room => Assert.DoesNotContain(room, Arrows.Reach(room)));

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_s_project_file_names_only_rooms_that_it_may_know(string room)
    {
        var project = XDocument.Parse(Repository.Read($"src/{room}/{room}.csproj"));
        var named = project.Descendants("ProjectReference").Select(reference => Path.GetFileNameWithoutExtension((string)reference.Attribute("Include")!));
        Assert.Empty(named.Except(Arrows.Direct[room]));
    }

    [Theory]
    [MemberData(nameof(CoreRooms))]
    public void A_core_assembly_uses_only_rooms_that_its_arrows_lead_to(string room)
    {
        var used = References(room).Where(name => name.StartsWith("Underturf.", StringComparison.Ordinal));
        Assert.Empty(used.Except(Arrows.Reach(room)));
    }

    [Theory]
    [MemberData(nameof(CoreRooms))]
    public void A_core_assembly_uses_no_console_network_process_files_or_host(string room) =>
        Assert.DoesNotContain(References(room), IsForbidden);

    [Fact]
    public void The_command_line_does_not_know_the_page() =>
        Assert.DoesNotContain(References("underturf"), name => name.StartsWith("Underturf.FieldApp", StringComparison.Ordinal));

    [Fact]
    public void The_solution_lists_every_project()
    {
        var listed = XDocument.Parse(Repository.Read("Underturf.slnx")).Descendants("Project").Select(project => (string)project.Attribute("Path")!);
        Assert.Equal(Repository.Files("", ".csproj").Order(StringComparer.Ordinal), listed.Order(StringComparer.Ordinal));
    }

    private static IEnumerable<string> References(string assembly) =>
        Assembly.Load(assembly).GetReferencedAssemblies().Select(reference => reference.Name!);

    private static bool IsForbidden(string name) =>
        forbiddenInCore.Any(forbidden => name == forbidden || name.StartsWith(forbidden + ".", StringComparison.Ordinal));
}
