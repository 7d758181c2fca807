using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>What the photos of a note show: the places and things that the note is about.</summary>
internal static class PhotoSubject
{
    public static IEnumerable<string?> Of(Fact fact) => fact switch
    {
        GroundFact f => [f.Id],
        TieFact f => [f.Thing],
        ControllerFact f => [f.Id],
        StationFact f => [f.Id],
        BoxFact f => [f.Id],
        ValveFact f => [f.Id],
        CoilFact f => [f.Id, f.Valve],
        EndFact f => [f.Id, f.Place],
        SpliceFact f => [f.Id, f.Place],
        CableFact f => [f.Id],
        ReadingFact f => [f.Place, .. f.Stations],
        TestFact f => [f.Station],
        LookFact f => [f.Place],
        WorkFact f => [f.Place, f.Target],
        StepFact f => [f.Place, f.Target],
        LeftAsFact f => [f.Place],
        LocateTicketFact f => [.. f.Places],
        ApprovalFact f => [f.About],
        PartsFact f => [f.For],
        ToldFact f => [f.About],
        PhotoFact f => [f.Place, f.About],
        _ => [],
    };
}
