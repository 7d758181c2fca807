using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning;

/// <summary>Somebody who waits for an answer hears how far it has come, and can give it up. The properties are invented.</summary>
public sealed class PaceTests
{
    [Theory]
    [InlineData(6501UL, 6)]
    [InlineData(6502UL, 30)]
    public void Progress_begins_at_nothing_never_goes_back_and_ends_with_the_whole(ulong seed, int stations)
    {
        var told = new Told();
        Open(seed, stations).Answer(new Waiting(told));
        Assert.Equal(0, told.Shares[0]);
        Assert.Equal(1, told.Shares[^1]);
        Assert.Equal(told.Shares.Order(), told.Shares);
        Assert.True(told.Shares.Count > 20, $"told {told.Shares.Count} times");
    }

    [Fact]
    public void Whoever_listens_gets_the_same_answer()
    {
        var notebook = Open(6502, 30);
        Assert.Equal(AnswersJson.Write(Open(6502, 30).Answer()), AnswersJson.Write(notebook.Answer(new Waiting(new Told()))));
        Assert.Equal(AnswersJson.Write(notebook.Answer()), AnswersJson.Write(notebook.Answer(new Waiting(new Told()))));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(0.95)]
    public void An_answer_can_be_given_up_at_any_point_and_asked_for_again(double share)
    {
        var notebook = Open(6502, 30);
        using var enough = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() => notebook.Answer(new Waiting(new Told(reached => CancelFrom(share, reached, enough)), enough.Token)));
        Assert.Equal(AnswersJson.Write(Open(6502, 30).Answer()), AnswersJson.Write(notebook.Answer()));
    }

    [Fact]
    public void An_answer_given_up_beforehand_is_not_begun()
    {
        var told = new Told();
        Assert.ThrowsAny<OperationCanceledException>(() => Open(6502, 30).Answer(new Standpoint(), new Waiting(told, new CancellationToken(canceled: true))));
        Assert.Empty(told.Shares);
    }

    private static Notebook Open(ulong seed, int stations) =>
        Notebook.Open(WorldGenerator.Make(seed, PracticeBook.Default, WorldShape.Whole(stations, null)).Log, PracticeBook.Default);

    private static void CancelFrom(double share, double reached, CancellationTokenSource enough)
    {
        if (reached >= share)
        {
            enough.Cancel();
        }
    }

    /// <summary>On the thread that asks, unlike the framework's own.</summary>
    private sealed class Told(Action<double>? heard = null) : IProgress<double>
    {
        public List<double> Shares { get; } = [];

        public void Report(double value)
        {
            Shares.Add(value);
            heard?.Invoke(value);
        }
    }
}
