namespace Underturf.Quantities;

/// <summary>How much a <see cref="Problem"/> matters.</summary>
public enum Severity
{
    /// <summary>Worth knowing; nothing was left out of the answer.</summary>
    Notice,

    /// <summary>Something could not be used; the answer stands without it.</summary>
    Error,
}

/// <summary>An expected failure as a value: where it is, what is wrong there and what to do about it.</summary>
/// <param name="Place">Line, entry, element or field, in the reader's words: "line 12", "writer-a/7", "coil of valve v3".</param>
/// <param name="Reason">What is wrong, one sentence without the full stop.</param>
/// <param name="Remedy">What the reader can do about it, one sentence without the full stop.</param>
public sealed record Problem(string Place, string Reason, string Remedy, Severity Severity = Severity.Error)
{
    private const int LongestQuote = 60;

    public override string ToString() => $"{Place}: {Reason}. {Remedy}.";

    /// <summary>The reader's own text in quotation marks, cut where it is too long to be read in a message.</summary>
    public static string Quote(string text) => text.Length <= LongestQuote ? $"'{text}'" : $"'{text[..LongestQuote]}…'";
}

/// <summary>Either a value or the problem that kept it from being made.</summary>
public readonly record struct Outcome<T>
{
    private readonly T? value;

    private Outcome(T? value, Problem? problem)
    {
        this.value = value;
        Problem = problem;
    }

    public Problem? Problem { get; }

    public bool Succeeded => Problem is null;

    /// <exception cref="InvalidOperationException">There is only a problem; asking for the value is a bug of the caller.</exception>
    public T Value => Problem is null ? value! : throw new InvalidOperationException(Problem.ToString());

    public static implicit operator Outcome<T>(T value) => new(value, null);

    public static implicit operator Outcome<T>(Problem problem) => new(default, problem);
}
