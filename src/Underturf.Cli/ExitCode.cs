namespace Underturf.Cli;

/// <summary>What the command line says to its caller.</summary>
internal static class ExitCode
{
    public const int Good = 0;

    /// <summary>Something in the input is wrong or was left out.</summary>
    public const int BadInput = 1;

    /// <summary>The command was not understood.</summary>
    public const int BadUsage = 2;

    /// <summary>A fault of the program itself.</summary>
    public const int Fault = 3;
}
