using System.Text;
using Microsoft.AspNetCore.Components;
using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.FieldApp;

/// <summary>
/// What a log lets one say, the next move first. A large property has many questions, so they are laid out a few at a time, and a touch between is answered.
/// </summary>
public sealed partial class AnswersView
{
    /// <summary>Laid out at one go: a few milliseconds each on a desk, ten times that on a phone.</summary>
    private const int AtOnce = 2;

    private OpenedLog? laying;
    private LookNow? looked;
    private int laidOut;
    private bool changed;

    [Parameter, EditorRequired]
    public OpenedLog Opened { get; set; } = null!;

    /// <summary>The property as it stands; nothing where nothing can be noted.</summary>
    [Parameter]
    public PropertyView? View { get; set; }

    /// <summary>True where the people of the property measure in US units.</summary>
    [Parameter]
    public bool UsUnits { get; set; } = true;

    /// <summary>Opens the form for a note.</summary>
    [Parameter]
    public EventCallback<NoteDraft> Note { get; set; }

    /// <summary>Turns to naming the ends of a place, by its id.</summary>
    [Parameter]
    public EventCallback<string> Name { get; set; }

    /// <summary>Opens the order of the day.</summary>
    [Parameter]
    public EventCallback Day { get; set; }

    /// <summary>Told the id of a place that is to be made dry.</summary>
    [Parameter]
    public EventCallback<string> Dry { get; set; }

    /// <summary>Turns to placing the first thing of a property of which nothing is known.</summary>
    [Parameter]
    public EventCallback Place { get; set; }

    /// <summary>Turns to where stations are noted.</summary>
    [Parameter]
    public EventCallback Stations { get; set; }

    /// <summary>Looking for what is hidden; nothing where nothing is.</summary>
    [Parameter]
    public LookNow? Looks { get; set; }

    /// <summary>Told the id of something hidden that is to be shown on the map.</summary>
    [Parameter]
    public EventCallback<string> Show { get; set; }

    /// <summary>All of it stands.</summary>
    [Parameter, EditorRequired]
    public EventCallback LaidOut { get; set; }

    /// <summary>What is noted after the steps of the first move.</summary>
    private IReadOnlyList<Fact> Asked =>
        [.. Opened.Asked.Take(1).SelectMany(steps => steps).SelectMany(body => Drafts.Read(Encoding.UTF8.GetBytes(body)).Notes).Select(draft => draft.Fact)];

    protected override async Task OnParametersSetAsync()
    {
        changed |= Looks != looked;
        looked = Looks;
        if (!ReferenceEquals(laying, Opened))
        {
            (laying, laidOut) = (Opened, 0);
            await LayOutAsync(Opened);
        }
    }

    private async Task LayOutAsync(OpenedLog mine)
    {
        while (laidOut < mine.Answers.Questions.Count)
        {
            laidOut += AtOnce;
            Render();
            await Task.Yield();
            if (!ReferenceEquals(laying, mine))
            {
                return;
            }
        }

        Render();
        await LaidOut.InvokeAsync();
    }

    private void Render()
    {
        changed = true;
        StateHasChanged();
    }

    /// <summary>Not for every share of a thought that goes on above it.</summary>
    protected override bool ShouldRender()
    {
        var render = changed;
        changed = false;
        return render;
    }
}
