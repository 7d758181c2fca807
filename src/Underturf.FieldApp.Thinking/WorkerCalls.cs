using System.Runtime.InteropServices.JavaScript;

namespace Underturf.FieldApp.Thinking;

/// <summary>The page's side of the worker that thinks (wwwroot/thinking.js).</summary>
internal static partial class WorkerCalls
{
    private const string Module = "thinking";

    /// <summary>From the folder of the runtime's own scripts.</summary>
    public static Task ReadyAsync() => JSHost.ImportAsync(Module, "../thinking.js");

    /// <summary>An object with "answer", the bytes that the task gives, or with "failed", why there are none; with neither where it was given up.</summary>
    /// <param name="number">Of the question, to give up this one and no later one.</param>
    /// <param name="task">Name of what <see cref="Thinker"/> is to do with the log.</param>
    /// <param name="about">What else the task has to know; empty where it is nothing.</param>
    [JSImport("ask", Module)]
    public static partial Task<JSObject> AskAsync(int number, string task, byte[] log, string about, [JSMarshalAs<JSType.Function<JSType.Number>>] Action<double> told);

    [JSImport("giveUp", Module)]
    public static partial void GiveUp(int number);
}
