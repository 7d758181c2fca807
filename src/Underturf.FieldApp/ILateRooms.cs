using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>What the page starts without, so that it can be noted in before all of it is here.</summary>
public interface ILateRooms
{
    /// <summary>The practice book, from which the forms of notes have their names.</summary>
    /// <returns>What kept it from being fetched; nothing once it is here.</returns>
    Task<Problem?> BookAsync();

    /// <summary>All that computes.</summary>
    /// <returns>What kept it from being fetched; nothing once it is here.</returns>
    Task<Problem?> AllAsync();
}
