using System.CommandLine;
using System.Text;
using Underturf.Property.Practice;

namespace Underturf.Cli.Commands;

/// <summary>Prints the practice book, or checks an edited one.</summary>
internal static class BookCommand
{
    public static Command Make()
    {
        var file = new Argument<FileInfo?>("BOOK") { Description = "A practice book to check.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("book", "Print the default practice book, or check an edited one.") { file };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(file) is { } edited)
            {
                Console.WriteLine($"Practice book {Files.Book(edited).Version} can be used.");
                return;
            }

            Console.Write(Encoding.UTF8.GetString(PracticeBook.DefaultBytes()));
        });
        return command;
    }
}
