namespace Underturf.Architecture;

/// <summary>The checkout that the tests were built from, and the text files in it that are ours.</summary>
internal static class Repository
{
    private static readonly string[] notOurs = ["bin", "obj", "node_modules", "artifacts", ".git", ".vs", "TestResults"];
    private static readonly string[] binary = [".png", ".jpg", ".ttf", ".woff2", ".pdf", ".ico"];

    public static DirectoryInfo Root { get; } = FindRoot();

    public static IReadOnlyList<string> Rooms { get; } =
        [.. Root.GetDirectories("src/Underturf.*").Select(room => room.Name).Order(StringComparer.Ordinal)];

    /// <summary>Text files under a folder, as paths relative to the root with forward slashes.</summary>
    public static IEnumerable<string> Files(string folder = "", params string[] extensions) =>
        Walk(new DirectoryInfo(Path.Combine(Root.FullName, folder)))
            .Where(file => !binary.Contains(file.Extension))
            .Where(file => extensions.Length == 0 || extensions.Contains(file.Extension))
            .Select(file => Path.GetRelativePath(Root.FullName, file.FullName).Replace('\\', '/'));

    public static string Read(string path) => File.ReadAllText(Path.Combine(Root.FullName, path));

    public static string[] Lines(string path) => File.ReadAllLines(Path.Combine(Root.FullName, path));

    private static IEnumerable<FileInfo> Walk(DirectoryInfo folder) =>
        folder.GetFiles().Concat(folder.GetDirectories().Where(IsOurs).SelectMany(Walk));

    private static bool IsOurs(DirectoryInfo folder) =>
        !notOurs.Contains(folder.Name) && !(folder.Name is "fonts" or "js" && folder.Parent!.Name == "wwwroot");

    private static DirectoryInfo FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Underturf.slnx")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("The tests run outside a checkout: no Underturf.slnx above them.");
        }

        return folder;
    }
}
