using System.CommandLine;

namespace Underturf.Cli.Commands;

/// <summary>Arguments and options that several commands share.</summary>
internal static class Arguments
{
    public static Argument<FileInfo> Log() => new("LOG") { Description = "The field log, one entry a line." };

    public static Option<FileInfo?> Book() => new("--book") { Description = "A practice book instead of the default one." };

    public static Option<string> Property() => new("--property") { Description = "Id of the property, for the first note of a new log." };

    public static Option<DirectoryInfo?> Data() => new("--data") { Description = "The data folder that makes you a writer of your own." };

    public static Option<bool> Again() => new("--again") { Description = "Note once more what you have noted before in the same words." };

    public static Option<bool> Json() => new("--json") { Description = "Print JSON for other programs." };
}
