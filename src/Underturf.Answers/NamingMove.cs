namespace Underturf.Reasoning;

/// <summary>Naming the ends of a place, as something to do next, in the same minutes of loss as every move.</summary>
/// <param name="Where">Label of the place.</param>
/// <param name="Place">Its id.</param>
/// <param name="Unnamed">Ends without a name.</param>
/// <param name="Ends">All ends, those that are joined counted as one.</param>
/// <param name="Plan">The plan that the minutes are of; nothing where no plan pays.</param>
/// <param name="Minutes">Expected minutes, walking included.</param>
/// <param name="WalkMinutes">To get there, contained in <paramref name="Minutes"/>.</param>
/// <param name="Worth">Minutes of expected loss by wrong and missing names that it saves, its own minutes not yet taken off.</param>
/// <param name="Caution">Of the plan's way.</param>
/// <param name="Why">What a name here is wanted for.</param>
public sealed record NamingMove(string Where, string Place, int Unnamed, int Ends, string Plan, double Minutes, double WalkMinutes, double Worth, string Caution, string Why)
{
    /// <summary>Among the others: what its rounds are is a matter of its own.</summary>
    public Move AsMove() => new($"name the ends of {Where}, {Unnamed} of {Ends} without a name: {Plan}", Where, Minutes, Worth, Caution, $"naming-{Place}") { Place = Place, WalkMinutes = WalkMinutes, Why = Why };
}
