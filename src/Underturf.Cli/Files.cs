using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Server;

namespace Underturf.Cli;

/// <summary>Reads what the commands are given.</summary>
internal static class Files
{
    /// <summary>A log, or the log in a pack of log and photos.</summary>
    public static LogDocument Log(FileInfo file) => LogDocument.Read(LogPack.Is(file) ? LogPack.Log(file) : Bytes(file));

    /// <summary>A log to be answered from. What is wrong with it is said first: it bears on every answer.</summary>
    public static Notebook Notebook(FileInfo log, FileInfo? book)
    {
        var notebook = Open(log, book);
        Guard.Errors(notebook.Problems);
        return notebook.Log.Entries.Count > 0 ? notebook
            : throw new Refusal(new Problem(log.Name, "holds no entry that can be read, so nothing can be said of the property", "Mend what is named above, or take a sound copy of the log"));
    }

    /// <summary>The same without a word.</summary>
    public static Notebook Open(FileInfo log, FileInfo? book) => Reasoning.Notebook.Open(Log(log), Book(book));

    public static PracticeBook Book(FileInfo? file)
    {
        if (file is null)
        {
            return PracticeBook.Default;
        }

        var book = PracticeBook.Read(Bytes(file));
        return book.Succeeded ? book.Value : throw new Refusal(book.Problem!);
    }

    public static byte[] Bytes(FileInfo file) => Directory.Exists(file.FullName)
        ? throw new Refusal(new Problem(file.Name, "is a folder", "Name the file in it"))
        : file.Exists ? File.ReadAllBytes(file.FullName)
        : throw new Refusal(new Problem(file.Name, "is not there", "Check the path"));

    public static void MakeFolder(DirectoryInfo folder)
    {
        try
        {
            folder.Create();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new Refusal(new Problem($"folder '{folder}'", File.Exists(folder.FullName) ? "is a file" : "cannot be made there", "Check the path, or name another folder: one that you may write in, on a disk with space"));
        }
    }

    /// <summary>Writes beside the target first, so that a stop in between leaves the old file whole; what cannot be finished is cleared away.</summary>
    public static void Write(string path, ReadOnlySpan<byte> bytes)
    {
        if (Directory.Exists(path))
        {
            throw new Refusal(new Problem(Path.GetFileName(path), "is a folder", "Name a file to write"));
        }

        if (Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder && !Directory.Exists(folder))
        {
            throw new Refusal(new Problem($"'{path}'", "lies in a folder that is not there", "Check the path: make the folder first, or name another file"));
        }

        try
        {
            WholeFile.Write(path, bytes);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new Refusal(new Problem($"'{path}'", $"cannot be written: {error.Message.Replace(path + ".part", path, StringComparison.Ordinal).TrimEnd('.')}", "Check the path, its permissions and the space on the disk"));
        }
    }
}
