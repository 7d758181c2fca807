namespace Underturf.Tests.Cli;

/// <summary>What a run of the program left behind.</summary>
internal sealed record Ran(int Code, string Out, string Error)
{
    public string[] Complaints => Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>It failed with words: this exit code, a message with these words, and never a stack trace.</summary>
    public Ran Failed(int code, params string[] words)
    {
        Assert.Equal(code, Code);
        return Said(words);
    }

    public Ran Said(params string[] words)
    {
        Assert.All(words, w => Assert.Contains(w, Error, StringComparison.Ordinal));
        return Civil();
    }

    public Ran Worked(params string[] words)
    {
        Assert.True(Code == 0, Error);
        Assert.All(words, w => Assert.Contains(w, Out, StringComparison.Ordinal));
        return Civil();
    }

    private Ran Civil()
    {
        Assert.DoesNotContain("   at ", Error + Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", Error + Out, StringComparison.Ordinal);
        return this;
    }
}
