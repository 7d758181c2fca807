using Underturf.Planning.Day;
using Underturf.Planning.Repair;
using Underturf.Planning.Rework;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Water;

namespace Underturf.FieldApp;

/// <summary>What the page asks of its host: what a log lets one say.</summary>
public interface INotebook
{
    /// <summary>Works out explanations and moves, away from the thread that answers touches.</summary>
    /// <exception cref="OperationCanceledException">Whoever waited has given it up.</exception>
    Task<Outcome<OpenedLog>> OpenAsync(ReadOnlyMemory<byte> log, Waiting waiting);

    /// <summary>Makes the papers to hand over, where nothing of the page is drawn. A log that is to be opened meanwhile goes before.</summary>
    /// <exception cref="OperationCanceledException">Whoever waited has given it up.</exception>
    Task<Outcome<IReadOnlyList<MadePaper>>> MakePapersAsync(ReadOnlyMemory<byte> log, Waiting waiting);

    /// <summary>Works out how every valve gets a station of its own, from the notes that were thought about last.</summary>
    /// <exception cref="OperationCanceledException">Whoever waited has given it up.</exception>
    Task<Outcome<Planned<ReworkAnswer>>> PlanReworkAsync(ReadOnlyMemory<byte> log, Waiting waiting);

    /// <summary>Works out what water comes in and what each station takes of it, from the notes that were thought about last.</summary>
    /// <exception cref="OperationCanceledException">Whoever waited has given it up.</exception>
    Task<Outcome<FlowLines>> FlowAsync(ReadOnlyMemory<byte> log, Waiting waiting);

    /// <summary>Orders the day from the notes that were thought about last, by the property's clock; with the sheet to take along.</summary>
    /// <exception cref="OperationCanceledException">Whoever waited has given it up.</exception>
    Task<Outcome<PlannedDay>> PlanDayAsync(ReadOnlyMemory<byte> log, DayAsk ask, Waiting waiting);

    /// <summary>Works out how a valve or a box is repaired, from the notes that were thought about last.</summary>
    /// <param name="thing">Its id or name, or the station of a valve that is its only one.</param>
    /// <exception cref="OperationCanceledException">Whoever waited has given it up.</exception>
    Task<Outcome<Planned<RepairAnswer>>> PlanRepairAsync(ReadOnlyMemory<byte> log, string thing, Waiting waiting);

    /// <summary>Works out which wire each conductor end of a place is, and what to touch next; whatever else was being worked out is given up for it.</summary>
    /// <exception cref="OperationCanceledException">Whoever waited has given it up.</exception>
    Task<Outcome<NamingAnswer>> NameAsync(ReadOnlyMemory<byte> log, NamingAsk ask, Waiting waiting);

    /// <summary>Works out where something hidden lies, and where to look first; whatever else was being worked out is given up for it.</summary>
    /// <exception cref="OperationCanceledException">Whoever waited has given it up.</exception>
    Task<Outcome<LocatedThing>> LocateAsync(ReadOnlyMemory<byte> log, LocateAsk ask, Waiting waiting);
}
