namespace Underturf.References.Tests.RandomProperties;

/// <summary>What a random property holds, so that a test can count that every kind occurs often.</summary>
[Flags]
internal enum Traits
{
    None = 0,
    SeveralOn = 1 << 0,
    SeveralCommons = 1 << 1,
    TwoTransformers = 1 << 2,
    WrongCommon = 1 << 3,
    MasterValve = 1 << 4,
    PumpRelay = 1 << 5,
    SensorClosed = 1 << 6,
    SensorResistive = 1 << 7,
    SensorOpen = 1 << 8,
    OneLeak = 1 << 9,
    SeveralLeaks = 1 << 10,
    Crossed = 1 << 11,
    Swapped = 1 << 12,
    CoilsInSeries = 1 << 13,
    CoilsInParallel = 1 << 14,
    ShortedTurns = 1 << 15,
    BadSplice = 1 << 16,
    Shunt = 1 << 17,
    Cut = 1 << 18,
    FiftyHertz = 1 << 19,
    SixtyHertz = 1 << 20,
    HalfWave = 1 << 21,
}
