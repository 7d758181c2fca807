namespace Underturf.FieldApp;

/// <summary>One open question. It never changes once it stands: another answer brings other questions.</summary>
public sealed partial class QuestionCard
{
    private bool stands;

    protected override bool ShouldRender() => !stands;

    protected override void OnAfterRender(bool firstRender) => stands = true;
}
