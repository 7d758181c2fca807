namespace Underturf.FieldApp;

/// <summary>The places of the page.</summary>
internal enum Place
{
    Now,
    Ground,
    Stations,
    Boxes,
    Papers,
}
