using Underturf.Planning.Day;

namespace Underturf.FieldApp;

/// <summary>The order of the day as it travels from the worker to the page, with the sheet to take along.</summary>
public sealed record PlannedDay(DayAnswer Day, MadePaper Sheet);
