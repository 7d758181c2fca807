using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.FieldApp;

/// <summary>Says a note in one line, with the names that people use.</summary>
internal static class NoteWords
{
    public static string Say(Fact fact, PropertyView view) => fact switch
    {
        ReadingFact f => $"{f.How}, {Named(f.Stations, f.Place, view)}: {Shown(f.Value)}{(f.Drifting ? ", would not settle" : "")}",
        TestFact f => $"{view.Name(f.Station)} run: {(f.Watered.Count == 0 ? "nothing waters" : $"waters {string.Join(", ", f.Watered)}")}{(f.Behaved is { } how ? $", valve {how}" : "")}",
        LookFact f => $"look at {view.Name(f.Place)}: {(f.Found.Count == 0 ? "nothing odd" : string.Join(", ", f.Found))}",
        EndFact f => $"{f.Colour}{(f.Gauge is { } gauge ? $" {gauge}" : "")} end at {view.Name(f.Place)}{(f.Mates.Count == 0 ? "" : $", joined to {string.Join(" and ", f.Mates.Select(view.Name))}")}",
        TouchFact { Value: { } shown } f => $"{f.How} at {view.Name(f.Place)}, {string.Join(" and ", f.Put.Select(view.Name))}: {Shown(shown)}",
        TouchFact f => $"{f.How} at {view.Name(f.Place)}: {f.Touched.Count} touched, {(f.Answered.Count == 0 ? "none answered" : $"{string.Join(", ", f.Answered.Select(view.Name))} answered")}",
        ResistorFact f => f.Ohms is { } ohms ? $"{ohms.Ohms:0.#} ohm fitted to {view.Name(f.End)}" : $"resistor taken off {view.Name(f.End)}",
        SoughtFact f => $"{view.Name(f.Id)} is looked for",
        TraceFact f => $"{string.Join(" and ", f.Of.Select(view.Name))} traced: {f.Ended}",
        SignFact f => $"{f.How}{(f.About is { } about ? $", {view.Name(about)}" : "")}",
        SearchFact f => $"{f.How}{(f.Minutes is { } minutes ? $", {minutes:0.#} min" : "")}: {(f.Found.Count == 0 ? "nothing found" : string.Join(", ", f.Found.Select(view.Name)))}",
        StepFact f => $"{view.Name(f.Place)}, {f.Job}: {(f.Target is { } target ? $"{view.Name(target)} " : "")}{f.Step}",
        ReworkStepFact f => $"rework of {view.Name(f.Station)}: {(f.Wire is { } wire ? $"{view.Name(wire)} " : "")}{f.Did}",
        RenumberedFact f => $"{f.Was} is {f.Now} now",
        TieFact f => $"{view.Name(f.Thing)} tied to {view.Name(f.Mark)}",
        PhotoFact f => $"photo{(f.Place is { } place ? $", {view.Name(place)}" : "")}{(f.Caption is { } caption ? $": {caption}" : "")}",
        PaperIssuedFact f => $"{f.Paper} handed over",
        LocateTicketFact f => $"locate ticket {f.Number ?? f.Id}{(f.Marked.Count > 0 ? $", marks seen: {string.Join(", ", f.Marked)}" : "")}",
        ApprovalFact f => $"{f.Of}, {view.Name(f.About)}: {f.State}",
        PartsFact f => $"parts for {view.Name(f.For)}: {f.State}",
        LeftAsFact f => $"{view.Name(f.Place)} left as: {f.State}",
        WorkFact f => $"work done: {f.Did}{(f.Place is { } place ? $", {view.Name(place)}" : "")}",
        SettingFact f => WaterNotes.Say(f, view),
        WatchFact f => WaterNotes.Say(f, view),
        CatchFact f => WaterNotes.Say(f, view),
        ToldFact f => $"{f.Who}: {f.Text}",
        BoxFact { Position: not null } f => $"{view.Name(f.Id)} placed",
        ValveFact { Position: not null } f => $"{view.Name(f.Id)} placed",
        StationFact f => view.Name(f.Id),
        ControllerFact { Position: not null } f => $"{view.Name(f.Id)} placed",
        IsolationValveFact { Position: not null } f => $"{view.Name(f.Id)} placed",
        WaterSupplyFact { Position: not null } f => $"{view.Name(f.Id)} placed",
        ValveFact { Elevation: not null } f => $"height of {view.Name(f.Id)}",
        FittingFact { Elevation: not null } f => $"height of {view.Name(f.Id)}",
        IsolationValveFact { Elevation: not null } f => $"height of {view.Name(f.Id)}",
        WaterSupplyFact { Elevation: not null } f => $"height of {view.Name(f.Id)}",
        WaterSupplyFact f => $"meter and backflow device of {view.Name(f.Id)}",
        OutletFact f => $"{f.Count} {f.What} on {view.Name(f.Station)}",
        PipeFact f => $"pipe from {view.Name(f.From)} to {view.Name(f.To)}",
        CableFact f => $"way of {view.Name(f.Id)} drawn",
        GroundFact f => $"{view.Ground.GetValueOrDefault(view.Identity.Of(f.Id))?.Label ?? f.What} placed",
        _ => "note",
    };

    private static string Named(IReadOnlyList<string> stations, string? place, PropertyView view) =>
        string.Join(" and ", stations.Select(view.Name).Concat(stations.Count == 0 || place is not null ? [place is null ? "property" : $"at {view.Name(place)}"] : []));

    private static string Shown(Shown value) => value.Value?.Text ?? NoteDraft.OverRange;
}
