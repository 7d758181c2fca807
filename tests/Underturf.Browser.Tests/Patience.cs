using System.Runtime.CompilerServices;
using Bunit;

namespace Underturf.Browser;

/// <summary>How long a component is waited for: the usual second is too short beside a build.</summary>
internal static class Patience
{
    [ModuleInitializer]
    internal static void Wait() => BunitContext.DefaultWaitTimeout = TimeSpan.FromSeconds(30);
}
