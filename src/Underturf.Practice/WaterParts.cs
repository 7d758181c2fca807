namespace Underturf.Property.Practice;

/// <summary>A kind of outlet.</summary>
/// <param name="LitresPerMinute">Of one, at its usual pressure.</param>
/// <param name="Exponent">x of q = k p^x.</param>
/// <param name="Compensates">Holds its flow from its usual pressure on.</param>
public sealed record OutletPractice(string Name, string Source, double LitresPerMinute, double Kilopascals, double Exponent, bool Compensates = false);

/// <summary>A size of water meter.</summary>
/// <param name="Name">In inches, as people call it.</param>
/// <param name="Millimetres">The same as a length.</param>
/// <param name="LitresPerMinute">A flow through it.</param>
/// <param name="Kilopascals">What it loses then; it grows with the square of the flow.</param>
public sealed record MeterPractice(string Name, string Source, double Millimetres, double LitresPerMinute, double Kilopascals);

/// <summary>A kind of backflow device.</summary>
/// <param name="OpensKilopascals">What its springs take before anything runs.</param>
/// <param name="Kilopascals">What it loses in all at a speed in its nominal size; what is over its springs grows with the square of the flow.</param>
/// <param name="MetresPerSecond">That speed.</param>
public sealed record BackflowPractice(string Name, string Source, double OpensKilopascals, double Kilopascals, double MetresPerSecond);

/// <summary>Pipes as they are noted.</summary>
/// <param name="Series">"Schedule40", "Sdr21", "Sdr26" or "Polyethylene": whose inside diameters hold.</param>
/// <param name="SmoothnessFactor">C of Hazen and Williams.</param>
public sealed record PipePractice(string Name, string Source, string Series, double SmoothnessFactor);

/// <summary>Shutting and emptying.</summary>
/// <param name="TurnMinutes">To shut or open an isolation valve, once there.</param>
/// <param name="NotHolding">Chance that an old isolation valve does not hold.</param>
/// <param name="LossFactor">K of an open isolation valve: h = K v^2 / (2 g).</param>
/// <param name="FlowVelocityMetresPerSecond">Above this a closing valve bangs.</param>
/// <param name="PortMillimetres">Bore of a bleed port.</param>
/// <param name="PortDischargeLeast">Its coefficient of discharge, its screw in the way.</param>
/// <param name="PortDischargeMost">The same at its best.</param>
/// <param name="PumpLitresPerMinute">Of the pump that is carried.</param>
/// <param name="PumpOwned">True where one is carried.</param>
/// <param name="PumpReadyMinutes">To set it up.</param>
/// <param name="WetFactor">How much longer work in water takes.</param>
/// <param name="FillMetresPerSecond">Speed at which an empty main is filled.</param>
public sealed record IsolatingPractice(
    string Source,
    double TurnMinutes,
    double NotHolding,
    double LossFactor,
    double FlowVelocityMetresPerSecond,
    double PortMillimetres,
    double PortDischargeLeast,
    double PortDischargeMost,
    double PumpLitresPerMinute,
    bool PumpOwned,
    double PumpReadyMinutes,
    double WetFactor,
    double FillMetresPerSecond);

/// <summary>A lateral that runs out of its lowest outlet each time its valve shuts.</summary>
/// <param name="WithoutChecks">Chance that outlets have no check valves.</param>
/// <param name="HeightsDifferMetres">How far a height that was noted may be off, as one standard deviation; outlets closer to each other count as one height.</param>
/// <param name="RestMetres">What stands no higher than this over the lowest outlet stays.</param>
/// <param name="UsualLitres">That run out where the book's chances to see it hold.</param>
/// <param name="DischargeLeast">Share of what its nozzle would give that the lowest outlet lets through at worst.</param>
/// <param name="SpacingMetresLeast">Of pipe for each outlet where none is noted, at least.</param>
/// <param name="SpacingMetresMost">At most.</param>
/// <param name="BoreMillimetresLeast">Of a lateral of which none is noted, at least.</param>
/// <param name="BoreMillimetresMost">At most.</param>
public sealed record LowHeadPractice(
    string Source,
    double WithoutChecks,
    double HeightsDifferMetres,
    double RestMetres,
    double UsualLitres,
    double DischargeLeast,
    double SpacingMetresLeast,
    double SpacingMetresMost,
    double BoreMillimetresLeast,
    double BoreMillimetresMost);
