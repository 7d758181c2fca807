namespace Underturf.FieldApp;

/// <summary>What is being done at a box.</summary>
public enum BoxTask
{
    Look,
    End,
    Rebuild,
    Name,
}

/// <summary>Which box is open and what is being done at it; what was typed stays while one is at another place of the page.</summary>
public sealed class BoxDesk
{
    /// <summary>Told when something else is done.</summary>
    public Action? Turned { get; set; }

    /// <summary>Id of the box that is open.</summary>
    public string? Box { get; private set; }

    public BoxTask Task { get; private set; }

    public EndDraft End { get; private set; } = new();

    public NamingDesk Naming { get; } = new();

    /// <summary>True while something is being noted that wants the screen of a phone to itself.</summary>
    public bool IsAtWork => Box is not null && Task != BoxTask.Look;

    public void Open(string box) => Turn(box, BoxTask.Look, Box == box ? End : End.Next());

    public void Close() => Turn(null, BoxTask.Look, End);

    /// <summary>For another log.</summary>
    public void Clear()
    {
        Naming.Draft = new NamingDraft();
        Turn(null, BoxTask.Look, new EndDraft());
    }

    public void TurnTo(BoxTask task) => Turn(Box, task, End);

    /// <summary>Begins a correction of an end, or another end.</summary>
    public void NoteEnd(EndDraft draft) => Turn(Box, BoxTask.End, draft);

    /// <summary>Takes up what was being done before the page was killed.</summary>
    public void TakeUp(string? box, BoxTask task, EndDraft end) => (Box, Task, End) = (box, task, end);

    private void Turn(string? box, BoxTask task, EndDraft end)
    {
        (Box, Task, End) = (box, task, end);
        Turned?.Invoke();
    }
}
