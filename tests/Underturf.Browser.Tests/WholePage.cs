using Underturf.FieldApp;
using Underturf.Quantities;

namespace Underturf.Browser;

/// <summary>A page of which every room is here from the beginning.</summary>
internal sealed class WholePage : ILateRooms
{
    public Task<Problem?> BookAsync() => Task.FromResult<Problem?>(null);

    public Task<Problem?> AllAsync() => Task.FromResult<Problem?>(null);
}
