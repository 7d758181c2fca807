using System.CommandLine;
using Underturf.Cli;
using Underturf.Cli.Commands;

var root = new RootCommand("The field notebook that thinks along with a landscape-irrigation technician.")
{
    CheckCommand.Make(),
    MergeCommand.Make(),
    NoteCommand.Make(),
    ShowCommand.Make(),
    ReadingsCommand.Make(),
    DiagnoseCommand.Make(),
    MovesCommand.Make(),
    CircuitCommand.Make(),
    FlowCommand.Make(),
    IsolateCommand.Make(),
    IdentifyCommand.Make(),
    LocateCommand.Make(),
    TieCommand.Make(),
    ReworkCommand.Make(),
    RepairCommand.Make(),
    DayCommand.Make(),
    PapersCommand.Make(),
    ServeCommand.Make(),
    BookCommand.Make(),
    DemoCommand.Make(),
    SimulateCommand.Make(),
    TrialCommand.Make(),
};

Console.SetOut(new PrintableWriter(Console.Out));
Console.SetError(new PrintableWriter(Console.Error));
var parsed = root.Parse(args);
if (parsed.Errors.Count > 0)
{
    foreach (var error in parsed.Errors)
    {
        Console.Error.WriteLine($"underturf: {Plain(error.Message)}");
    }

    Console.Error.WriteLine("Run underturf --help, or underturf COMMAND --help, for what can be asked.");
    return ExitCode.BadUsage;
}

return await Guard.Run(() => parsed.InvokeAsync(new InvocationConfiguration { EnableDefaultExceptionHandler = false }));

// Every option that has a type beside text is a number.
static string Plain(string message) => message.IndexOf(" as expected type", StringComparison.Ordinal) is var at and > 0 ? $"{message[..at]}: give a number." : message;
