using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Underturf.Architecture;

public sealed partial class FileTests
{
    private const int LongestFileLines = 300;

    // Put together from pieces, so that this file does not hold what it looks for.
    private static readonly string[] unfinished = ["TO" + "DO", "FIX" + "ME", "XX" + "X", "NotImplemented" + "Exception", "HA" + "CK"];
    private static readonly string[] waits = ["Thread." + "Sleep", "Task." + "Delay", "Skip " + "=", "WaitFor" + "TimeoutAsync"];
    private static readonly string[] machine = ["/wo" + "rk/", "/ro" + "ot/", "/ho" + "me/", "\"resol" + "ved\": \"http"];

    [Fact]
    public void No_source_file_is_too_long_to_read_in_one_go() =>
        Assert.All(Repository.Files("src", ".cs", ".razor", ".css", ".js"), path => Assert.True(Repository.Lines(path).Length <= LongestFileLines, path));

    [Fact]
    public void No_source_marks_work_as_left_undone() => Assert.Empty(Hits("src", unfinished).Concat(Hits("bench", unfinished)));

    [Fact]
    public void No_testwaits_for_time_to_pass_or_is_left_out() => Assert.Empty(Hits("tests", waits));

    [Fact]
    public void No_file_names_a_folder_of_themachine_it_was_written_on() => Assert.Empty(Hits("", machine));

    [Fact]
    public void Every_test_is_named_with_a_sentence()
    {
        var names = Repository.Files("tests", ".cs").SelectMany(path => TestMethod().Matches(Repository.Read(path)).Select(match => match.Groups["name"].Value)).ToList();
        Assert.True(names.Count > 20);
        Assert.All(names, name => Assert.True(name.Count(letter => letter == '_') >= 2, name));
    }

    [Fact]
    public void Every_package_is_in_the_third_party_notices()
    {
        var notices = Repository.Read("THIRD-PARTY-NOTICES.md");
        var packages = XDocument.Parse(Repository.Read("Directory.Packages.props")).Descendants("PackageVersion")
            .Select(package => ((string)package.Attribute("Include")!, ((string)package.Attribute("Version")!).Trim('[', ']')));
        Assert.All(packages, package => Assert.Matches($@"\| {Regex.Escape(package.Item1)} \|.*\| {Regex.Escape(package.Item2)}[ ,]", notices));
    }

    [Fact]
    public void The_architecture_page_names_every_room()
    {
        var page = Repository.Read("docs/architecture.md");
        Assert.All(Repository.Rooms, room => Assert.Contains($"`{room["Underturf.".Length..]}`", page, StringComparison.Ordinal));
    }

    private static IEnumerable<string> Hits(string folder, string[] words) =>
        from path in Repository.Files(folder)
        let text = Repository.Read(path)
        from word in words
        where text.Contains(word, StringComparison.Ordinal)
        select $"{path}: {word}";

    [GeneratedRegex(@"\[(Fact|Theory)[^\n]*\n(\s*\[[^\n]*\n)*\s*public (async )?[\w<>]+ (?<name>\w+)\(", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex TestMethod();
}
