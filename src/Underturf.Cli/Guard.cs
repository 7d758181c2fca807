using Underturf.Quantities;

namespace Underturf.Cli;

/// <summary>Turns what can go wrong around files into words; a user never sees a stack trace.</summary>
internal static class Guard
{
    public static async Task<int> Run(Func<Task<int>> work)
    {
        try
        {
            return await work();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            Print(new Problem("file", error.Message.TrimEnd('.'), "Check the path, its permissions and the space on the disk"));
            return ExitCode.BadInput;
        }
        catch (Refusal refusal)
        {
            Print(refusal.Problem);
            return ExitCode.BadInput;
        }
        catch (Exception error) when (Environment.GetEnvironmentVariable("UNDERTURF_TRACE") is null)
        {
            Console.Error.WriteLine($"underturf: a fault of the program, not of your notes: {error.GetType().Name}: {error.Message}");
            Console.Error.WriteLine("Nothing was changed. Set UNDERTURF_TRACE=1 to see where, and tell the developers.");
            return ExitCode.Fault;
        }
    }

    /// <summary>Prints problems to standard error and says which exit code they ask for.</summary>
    public static int Report(IReadOnlyList<Problem> problems)
    {
        foreach (var problem in problems)
        {
            Print(problem);
        }

        return CodeOf(problems);
    }

    /// <summary>Prints what is wrong, before an answer.</summary>
    public static void Errors(IReadOnlyList<Problem> problems) => Report([.. problems.Where(p => p.Severity == Severity.Error)]);

    /// <summary>Prints what is to note, after an answer, and says which exit code all of it asks for.</summary>
    public static int Notes(IReadOnlyList<Problem> problems)
    {
        Report([.. problems.Where(p => p.Severity != Severity.Error)]);
        return CodeOf(problems);
    }

    private static int CodeOf(IReadOnlyList<Problem> problems) => problems.Any(p => p.Severity == Severity.Error) ? ExitCode.BadInput : ExitCode.Good;

    private static void Print(Problem problem) => Console.Error.WriteLine($"{(problem.Severity == Severity.Error ? "wrong" : "note")}: {problem}");
}

/// <summary>Input that a command cannot go on with.</summary>
internal sealed class Refusal(Problem problem) : Exception(problem.ToString())
{
    public Problem Problem { get; } = problem;
}
