using Underturf.FieldApp;
using Underturf.Quantities;

namespace Underturf.Browser;

/// <summary>A device that says what it is told to say.</summary>
internal sealed class FixedWhereabouts : IWhereabouts
{
    public Outcome<Fix> Says { get; set; } = new Fix(0, 0, 10);

    public Task<Outcome<Fix>> FindAsync() => Task.FromResult(Says);
}
