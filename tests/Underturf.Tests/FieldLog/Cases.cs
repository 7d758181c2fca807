using CsCheck;

namespace Underturf.Tests.FieldLog;

/// <summary>Runs a property over generated cases with a fixed seed, so that every run sees the same ones; a failure names its case.</summary>
internal static class Cases
{
    private const ulong Seed = 20310402;

    public static void Each<T>(Gen<T> gen, int count, Action<T> check)
    {
        for (uint i = 0; i < count; i++)
        {
            try
            {
                check(Make(gen, i));
            }
            catch (Exception e)
            {
                throw new InvalidOperationException($"case {i} of {count}: {e.Message}", e);
            }
        }
    }

    public static T Make<T>(Gen<T> gen, uint number) => gen.Generate(new PCG(number, Seed), null, out _);
}
