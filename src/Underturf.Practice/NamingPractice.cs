namespace Underturf.Property.Practice;

/// <summary>What a way of naming conductors shows.</summary>
public enum NamingSign
{
    /// <summary>Each end that is touched answers or does not.</summary>
    Answers,

    /// <summary>All ends carry something; the loudest is it.</summary>
    Loudest,

    /// <summary>Ohms at the far side tell which known resistor it ends at.</summary>
    Ohms,

    /// <summary>Ohms to earth and to the neighbours: names nothing, but belongs to the proof of a spare.</summary>
    Apart,

    /// <summary>A source is put on an end of the place and a valve clicks: what the end leads on to, away from the controller.</summary>
    Onward,
}

/// <summary>A way to tell which wire is which: something is put on wires at one place, ends are touched at another.</summary>
/// <param name="PutMinutes">To put it on wires, or to measure one at the far side.</param>
/// <param name="WireMinutes">More for each wire that carries it.</param>
/// <param name="TouchMinutes">To touch one end.</param>
/// <param name="ReadyMinutes">To make one end ready: freed, or fitted with a resistor.</param>
/// <param name="Most">How many wires may carry it together.</param>
/// <param name="NeedsCommon">True where it wants a common that is known at the place.</param>
/// <param name="Live">True where valves can open by it.</param>
/// <param name="CarriesLoad">True where it proves that a wire carries a coil.</param>
/// <param name="Missed">Chance that the right end does not answer, or is not the loudest.</param>
/// <param name="Imagined">Chance that another end answers.</param>
/// <param name="Deaf">Chance that an end is hard to hear or to make contact with, each time.</param>
/// <param name="DeafMissed">What is missed of such an end.</param>
/// <param name="Chatty">Chance that an end lies so that it answers for its neighbours, each time.</param>
/// <param name="ChattyImagined">Chance that such an end answers for them.</param>
/// <param name="CommonAnswers">Chance that the common answers whatever carries it, each time.</param>
/// <param name="Back">What to do where it is put on ends of the place and wires are touched at the controller; nothing where that cannot be done.</param>
/// <param name="BackCaution">The caution of that.</param>
public sealed record NamingWay(
    string Name,
    string Source,
    string Say,
    NamingSign Shows,
    bool Owned,
    string Caution,
    double PutMinutes = 0,
    double WireMinutes = 0,
    double TouchMinutes = 0,
    double ReadyMinutes = 0,
    int Most = 1,
    bool NeedsCommon = false,
    bool Live = false,
    bool CarriesLoad = false,
    double Missed = 0,
    double Imagined = 0,
    double Deaf = 0,
    double DeafMissed = 0,
    double Chatty = 0,
    double ChattyImagined = 0,
    double CommonAnswers = 0,
    string? Back = null,
    string? BackCaution = null)
{
    /// <param name="back">True where it is put on at the place.</param>
    public string SayOf(bool back) => back && Back is { } say ? say : Say;

    public string CautionOf(bool back) => back && BackCaution is { } caution ? caution : Caution;

    /// <summary>A common that is the way back cannot carry it.</summary>
    public bool FitsCommon => !NeedsCommon && !Live;
}

/// <summary>Telling conductors apart: ways, what is likely beforehand, and when a name is sure enough.</summary>
/// <param name="Resistors">Ohms of the resistors in the bag.</param>
/// <param name="ResistorTolerance">Standard deviation of one, as a share.</param>
/// <param name="Passes">Chance that a station's conductor is among the ends of a place that its known run passes.</param>
/// <param name="MayPass">The same where its run is not known.</param>
/// <param name="Strays">The same where its known run goes elsewhere.</param>
/// <param name="CommonPasses">Chance that a controller's common is among the ends.</param>
/// <param name="LoosePasses">Chance that a loose end at the controller comes to this place.</param>
/// <param name="Nothing">Weight of an end that comes from no controller: a run between boxes, a wire cut off.</param>
/// <param name="CutOff">Chance that an end that comes from no controller is the far part of a station's conductor, cut on the way.</param>
/// <param name="LeadsOn">Chance that an end that was noted alone is joined to what leads on to a valve.</param>
/// <param name="ColourKept">Chance that a conductor has one colour from end to end.</param>
/// <param name="GaugeKept">The same of its gauge.</param>
/// <param name="CommonColours">Colours that a common usually has.</param>
/// <param name="CommonColoured">Chance that a common has one of them.</param>
/// <param name="StationColoured">Chance that a station's conductor has one of them.</param>
/// <param name="CommonGauged">Chance that a common has the common's gauge of the practice book where a station's is another.</param>
/// <param name="StationGauged">Chance that a station's conductor has that gauge.</param>
/// <param name="NotedWrong">Chance that a measured note of what an end carries is wrong.</param>
/// <param name="ToldWrong">The same of one that is told, estimated or inferred.</param>
/// <param name="SoundOhms">Between a conductor and earth or its neighbours, less is suspect.</param>
/// <param name="CommonAt">A lead may be clipped to an end that is the common with this probability.</param>
/// <param name="NameAt">An end gets its name at this probability.</param>
/// <param name="WrongNameMinutes">What a wrong name costs later.</param>
/// <param name="UnnamedMinutes">What an end without a name costs later.</param>
/// <param name="People">How many there are: one walks between controller and box, two do not.</param>
/// <param name="Remote">True where one can switch stations from the box.</param>
public sealed record NamingPractice(
    string Source,
    IReadOnlyList<NamingWay> Ways,
    IReadOnlyList<double> Resistors,
    double ResistorTolerance,
    double Passes,
    double MayPass,
    double Strays,
    double CommonPasses,
    double LoosePasses,
    double Nothing,
    double CutOff,
    double LeadsOn,
    double ColourKept,
    double GaugeKept,
    IReadOnlyList<string> CommonColours,
    double CommonColoured,
    double StationColoured,
    double CommonGauged,
    double StationGauged,
    double NotedWrong,
    double ToldWrong,
    double SoundOhms,
    double CommonAt,
    double NameAt,
    double WrongNameMinutes,
    double UnnamedMinutes,
    int People,
    bool Remote)
{
    /// <summary>What an end can still cost whose likeliest name has a probability: it is written down and wrong, or stays without, whichever costs less.</summary>
    public double Left(double probability) => Math.Min((1 - probability) * WrongNameMinutes, UnnamedMinutes);

    public NamingWay? Way(string name) => Ways.FirstOrDefault(w => w.Name == name);
}
