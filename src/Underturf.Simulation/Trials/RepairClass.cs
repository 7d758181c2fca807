namespace Underturf.Simulation.Trials;

/// <summary>
/// What one would do about it: a repair, and its place where it cures only there. Fixed before anything is scored; explanations that ask for the same are one class.
/// </summary>
/// <param name="Repairs">Names in the practice book, in order; several where several things are wrong at once; none where nothing is to be done.</param>
/// <param name="Place">Label of the place; nothing where no repair of it is placed.</param>
public sealed record RepairClass(string Repairs, string? Place)
{
    /// <summary>Between the names of several repairs.</summary>
    public const string And = " + ";

    /// <summary>Nothing is broken.</summary>
    public static RepairClass Nothing { get; } = new(string.Empty, null);

    /// <summary>No repair is known: something that the practice book does not have.</summary>
    public static RepairClass Unknown { get; } = new("not known", null);

    public override string ToString() => this == Nothing ? "nothing" : Place is null ? Repairs : $"{Repairs} at {Place}";
}

/// <summary>What is said of a question: how probable each class is.</summary>
public sealed record Statement(IReadOnlyDictionary<RepairClass, double> Classes)
{
    /// <summary>The likeliest class; ties by name.</summary>
    public KeyValuePair<RepairClass, double> Top => Classes.OrderByDescending(c => c.Value).ThenBy(c => c.Key.ToString(), StringComparer.Ordinal).First();
}
