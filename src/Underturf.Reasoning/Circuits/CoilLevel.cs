using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Circuits;

/// <summary>A controller's usual coil against the practice book's: the logarithm of their ratio, with its standard deviation.</summary>
internal readonly record struct CoilLevel(double Log, double LogSpread)
{
    /// <summary>The ratio itself.</summary>
    public double Factor => Math.Exp(Log);

    public static CoilLevel Of(Outlook outlook) => new(outlook.LogLevel, outlook.LogLevelSpread);
}
