namespace Underturf.Cli;

/// <summary>
/// The folder that makes a command line a writer of its own. Its id is drawn once; the folder's path is kept beside it, so that a copied or
/// restored folder is noticed and becomes a new writer.
/// </summary>
internal sealed class WriterFolder(DirectoryInfo? given)
{
    private readonly DirectoryInfo folder = given ?? new DirectoryInfo(System.IO.Path.Combine(
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify),
        "underturf"));

    public string Path => folder.FullName;

    public string Writer()
    {
        var file = System.IO.Path.Combine(folder.FullName, "writer");
        var here = $"{Environment.MachineName} {folder.FullName}";
        if (File.Exists(file) && File.ReadAllLines(file) is [var known, var place] && place == here)
        {
            return known;
        }

        var writer = $"cli-{Convert.ToHexString(Guid.NewGuid().ToByteArray().AsSpan(0, 6)).ToLowerInvariant()}";
        folder.Create();
        File.WriteAllLines(file, [writer, here]);
        return writer;
    }
}
