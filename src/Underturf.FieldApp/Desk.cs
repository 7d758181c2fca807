using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>What one place of the page has the worker work out: the last answer, and whether a newer one is on its way.</summary>
public abstract class Desk<T>
    where T : class
{
    private int asked;
    private object? of;

    /// <summary>It stays while a newer one is worked out, and where that fails.</summary>
    public T? Answer { get; protected set; }

    public Problem? Trouble { get; private set; }

    public bool Working { get; private set; }

    /// <summary>True where it was asked of these notes, answered or not.</summary>
    public bool IsOf(object? notes) => ReferenceEquals(of, notes);

    /// <summary>It is asked anew.</summary>
    /// <param name="notes">What it is asked of.</param>
    /// <returns>Number of the question.</returns>
    public int Begin(object? notes)
    {
        (of, Working, Trouble) = (notes, true, null);
        return ++asked;
    }

    /// <summary>Whether nothing was asked since: what comes of an older question counts no longer.</summary>
    public bool IsLast(int question) => question == asked;

    public virtual void End(Outcome<T> answer)
    {
        (Working, Trouble) = (false, answer.Problem);
        Answer = answer.Succeeded ? answer.Value : Answer;
    }

    /// <summary>It was given up for something that goes before, and is to be asked again; what was known before stays.</summary>
    public void GiveUp() => (of, Working) = (null, false);

    /// <summary>Another property is open.</summary>
    public virtual void Clear()
    {
        asked++;
        (of, Answer, Trouble, Working) = (null, null, null, false);
    }
}
