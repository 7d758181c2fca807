namespace Underturf.FieldLog;

/// <summary>The stored name and present version of each kind; independent of the class names.</summary>
public static class FactKinds
{
    public static IReadOnlyList<(string Kind, int Version, Type Type)> All { get; } =
    [
        ("property", 1, typeof(PropertyFact)),
        ("ground", 1, typeof(GroundFact)),
        ("tie", 1, typeof(TieFact)),
        ("controller", 1, typeof(ControllerFact)),
        ("station", 1, typeof(StationFact)),
        ("box", 1, typeof(BoxFact)),
        ("valve", 1, typeof(ValveFact)),
        ("coil", 1, typeof(CoilFact)),
        ("end", 1, typeof(EndFact)),
        ("splice", 1, typeof(SpliceFact)),
        ("cable", 1, typeof(CableFact)),
        ("reading", 1, typeof(ReadingFact)),
        ("test", 1, typeof(TestFact)),
        ("look", 1, typeof(LookFact)),
        ("touch", 1, typeof(TouchFact)),
        ("resistor", 1, typeof(ResistorFact)),
        ("sought", 1, typeof(SoughtFact)),
        ("spot", 1, typeof(SpotFact)),
        ("trace", 1, typeof(TraceFact)),
        ("sign", 1, typeof(SignFact)),
        ("search", 1, typeof(SearchFact)),
        ("work", 1, typeof(WorkFact)),
        ("step", 1, typeof(StepFact)),
        ("rework-step", 1, typeof(ReworkStepFact)),
        ("renumbered", 1, typeof(RenumberedFact)),
        ("left-as", 1, typeof(LeftAsFact)),
        ("told", 1, typeof(ToldFact)),
        ("photo", 1, typeof(PhotoFact)),
        ("same-as", 1, typeof(SameAsFact)),
        ("question-opened", 1, typeof(QuestionOpenedFact)),
        ("question-closed", 1, typeof(QuestionClosedFact)),
        ("strike", 1, typeof(StrikeFact)),
        ("restore", 1, typeof(RestoreFact)),
        ("paper-issued", 1, typeof(PaperIssuedFact)),
    ];
}
