namespace Underturf.Tests;

/// <summary>Files of the repository, found by walking up from where the tests run.</summary>
internal static class Repository
{
    public static string Read(string path) => File.ReadAllText(Path.Combine(Root, path));

    public static string Root { get; } = FindRoot();

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Underturf.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("Underturf.slnx stands in no folder above the tests");
    }
}
