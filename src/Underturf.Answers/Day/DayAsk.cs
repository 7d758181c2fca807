namespace Underturf.Planning.Day;

/// <summary>"It is half past seven, I am at the tool shed, and I have 300 minutes."</summary>
/// <param name="Begin">When the work begins; the day goes by the property's clock, and by the clock that this is given in where that is not known.</param>
/// <param name="At">Id or label of the place where one stands; the controller where nothing is said.</param>
/// <param name="Minutes">How long one has; a day of the practice book where nothing is said.</param>
public sealed record DayAsk(DateTimeOffset Begin, string? At = null, double? Minutes = null);
