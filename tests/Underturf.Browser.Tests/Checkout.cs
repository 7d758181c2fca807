namespace Underturf.Browser;

/// <summary>Where the checkout is that the tests were built from.</summary>
internal static class Checkout
{
    public static string Root { get; } = Find();

    public static string DemoLog => Path.Combine(Root, "samples", "memorial-garden", "log.jsonl");

    /// <summary>A path in artifacts/, whose folder is made if need be.</summary>
    public static string Artifact(string name)
    {
        var folder = Directory.CreateDirectory(Path.Combine(Root, "artifacts", "page"));
        return Path.Combine(folder.FullName, name);
    }

    private static string Find()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Underturf.slnx")))
        {
            folder = Path.GetDirectoryName(folder.TrimEnd(Path.DirectorySeparatorChar))
                ?? throw new InvalidOperationException("The tests run outside a checkout: no Underturf.slnx above them.");
        }

        return folder;
    }
}
